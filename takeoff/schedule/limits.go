package schedule

// mostHeads is how often other headings may start in a sheet.
const mostHeads = 500
