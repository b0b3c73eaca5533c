package schedule

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"blankoff/takeoff"
)

// twentyColumns is a schedule of n rows with twenty columns, as a large job
// gives them.
func twentyColumns(n int) []byte {
	var b bytes.Buffer
	b.WriteString("tag,system,level,kind,style,shape,quantity,width_mm,height_mm,diameter_mm,length_mm,angle_deg,radius_mm,from,joint,class,test_pa,scope,stage,note\n")
	for i := range n {
		fmt.Fprintf(&b, "S%d,Supply %d,Level %d,straight,,rectangular,1,%d,%d,,%d,,,S%d,flanged,B,400,in,2,plant room\n",
			i, i/1000, i/300, 200+i%17*50, 150+i%13*50, 1200+i%7*25, i-1)
	}
	return b.Bytes()
}

func bareRead(b *testing.B, data []byte) {
	r := csv.NewReader(bytes.NewReader(data))
	r.ReuseRecord = true
	for {
		if _, err := r.Read(); err == io.EOF {
			return
		} else if err != nil {
			b.Fatal(err)
		}
	}
}

func wholeRead(b *testing.B, data []byte) {
	if _, err := ReadFrom("job.csv", data, func(*takeoff.Row) error { return nil }); err != nil {
		b.Fatal(err)
	}
}

// BenchmarkText reads 100,000 rows and reports the time as a ratio to a bare
// read by encoding/csv in the same run.
func BenchmarkText(b *testing.B) {
	data := twentyColumns(100_000)
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	var bare, whole time.Duration
	for b.Loop() {
		start := time.Now()
		bareRead(b, data)
		bare += time.Since(start)
		start = time.Now()
		wholeRead(b, data)
		whole += time.Since(start)
	}
	b.ReportMetric(float64(whole)/float64(bare), "x-bare-csv")
	b.ReportMetric(float64(whole.Nanoseconds())/float64(b.N)/100_000, "ns/row")
}

// BenchmarkWorkbook reads a workbook of 100,000 rows of twenty columns, measures
// and sums them, and reports the time as a ratio to a bare read through excelize's
// row iterator in the same run.
func BenchmarkWorkbook(b *testing.B) {
	const rows = 100_000
	data := twentyColumnsXLSX(b, rows)
	b.ReportAllocs()
	var ours, theirs time.Duration
	for b.Loop() {
		start := time.Now()
		t := takeoff.New(takeoff.Options{TotalsOnly: true})
		info, err := Options{}.IntoFrom("job.xlsx", data, t, nil)
		if err != nil {
			b.Fatal(err)
		}
		t.Finish(info.Schedule, info.Faults, info.Notes)
		ours += time.Since(start)
		start = time.Now()
		excelizeRead(b, data)
		theirs += time.Since(start)
	}
	b.ReportMetric(float64(ours)/float64(theirs), "x-excelize")
	b.ReportMetric(rows*float64(b.N)/ours.Seconds(), "rows/s")
	b.ReportMetric(rows*float64(b.N)/theirs.Seconds(), "rows/s-excelize")
}

func twentyColumnsXLSX(b *testing.B, n int) []byte {
	records, err := csv.NewReader(bytes.NewReader(twentyColumns(n))).ReadAll()
	if err != nil {
		b.Fatal(err)
	}
	f := excelize.NewFile()
	defer f.Close()
	sw, err := f.NewStreamWriter("Sheet1")
	for i, record := range records {
		values := make([]any, len(record))
		for k, cell := range record {
			if v, bad := strconv.ParseFloat(cell, 64); bad == nil {
				values[k] = v
			} else if cell != "" {
				values[k] = cell
			}
		}
		if err == nil {
			err = sw.SetRow(fmt.Sprintf("A%d", i+1), values)
		}
	}
	var out bytes.Buffer
	if err == nil {
		err = sw.Flush()
	}
	if err == nil {
		err = f.Write(&out)
	}
	if err != nil {
		b.Fatal(err)
	}
	return out.Bytes()
}

func excelizeRead(b *testing.B, data []byte) {
	f, err := excelize.OpenReader(bytes.NewReader(data))
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	rows, err := f.Rows("Sheet1")
	if err != nil {
		b.Fatal(err)
	}
	defer rows.Close()
	for rows.Next() {
		if _, err := rows.Columns(excelize.Options{RawCellValue: true}); err != nil {
			b.Fatal(err)
		}
	}
}
