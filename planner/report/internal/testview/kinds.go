package testview

import (
	"strings"

	"blankoff/takeoff"
	"blankoff/takeoff/schedule"
)

// EveryKind is a schedule of one system with every kind and style of piece, made
// up; Follows says which rows have an area in closed form.
const EveryKind = `tag,from,kind,style,shape,plane,width_mm,height_mm,diameter_mm,length_mm,angle_deg,radius_mm,throat_mm,legs_mm,gores,shape2,width2_mm,height2_mm,diameter2_mm,offset_mm,offset2_mm,branch_width_mm,branch_height_mm,branch_diameter_mm,branch_length_mm,branch_angle_deg,branch_shift_mm,entry_mm,rise_mm,lining_mm,size_is,quantity,at_mm,area_m2,scope
P1,,plenum,,,,1400,900,,800,,,,,,,,,,,,,,,,,,,,,,,,,
A1,P1,straight,,,,800,500,,9000,,,,,,,,,,,,,,,,,,,,,,1,,,
A2,A1,bend,,,,800,500,,,90,,150,50,,,,,,,,,,,,,,,,,,,,,
A3,A2,bend,mitred,,height,800,500,,,45,,,60,,,,,,,,,,,,,,,,,,,,,
A4,A3,bend,square throat,,,800,500,,,90,,,,,,,,,,,,,,,,,,,,,,,
A5,A4,bend,square heel,,,800,500,,,90,,120,40,,,,,,,,,,,,,,,,,,,,,
A6,A5,bend,radius,,,800,500,,,60,,200,30,,,600,,,,,,,,,,,,,,,,,,
A7,A6,reducer,,,,600,500,,700,,,,,,,500,400,,,,,,,,,,,,,,,,,
A8,A7,reducer,,,,500,400,,600,,,,,,,400,300,,80,-40,,,,,,,,,,,,,,
A9,A8,offset,straight,,,400,300,,800,,,,50,,,,,,200,,,,,,,,,,,,,,,
A10,A9,offset,mitred,,height,400,300,,800,,,,100,,,,,,-250,,,,,,,,,,,,,,,
A11,A10,offset,,,,400,300,,1200,,,,,,,,,,300,,,,,,,,,,,,,,,
A12,A11,offset,radius,,,400,300,,1500,,350,,,,,,,,300,,,,,,,,,,,,,,,
A13,A12,straight,,,,400,300,,4500,,,,,,,,,,,,,,,,,,,,,,1,,,
A14,A13,inline,,,,400,300,,900,,,,,,,,,,,,,,,,,,,,,,,,,through
A15,A14,tee,,,,400,300,,600,,,,,,,,,,,,300,200,,150,60,,,,,,,,,
A16,A15,cross,conical,,,400,300,,700,,,,,,,,,,,,,,160,200,,,220,,,,,,,
A17,A16,tee,shoe,,,400,300,,700,,,,,,,,,,,,250,150,,250,,,100,,,,,,,
A18,A17,breeches,,,,400,300,,,90,,100,30,,,,,,,,,,,,,,,,,,,,,
A19,A18/branch,straight,,,,200,300,,2000,,,,,,,,,,,,,,,,,,,,20,clear,2,,,
A20,A19,cap,,,,240,340,,,,,,,,,,,,,,,,,,,,,,,,,,,
A21,A18/branch2,transition,,,,200,300,,400,,,,,,,,,250,,,,,,,,,,,,,,,,
A22,A21,straight,,circular,,,,250,7000,,,,,,,,,,,,,,,,,,,,,,1,,,
A23,A22,bend,gored,,,,,250,,90,250,,,5,,,,,,,,,,,,,,,,,,,,
A24,A23,reducer,,,,,,250,300,,,,,,,,,200,,,,,,,,,,,,,,,,
A25,A24,reducer,,,,,,200,300,,,,,,,,,160,40,,,,,,,,,,,,,,,
A26,A25,cap,dished,,,,,160,,,,,,,,,,,,,,,,,,,,40,,,,,,
S1,A1,spigot,,,,,,,,,,,,,,,,,,,,,200,100,,,,,,,3,1500,,
S2,A1,spigot,conical,,,,,,,,,,,,,,,,,,,,160,150,,,220,,,,1,5000,,
S3,A1,spigot,shoe,,,,,,,,,,,,,,,,,,300,200,,220,,,120,,,,1,7500,,
S4,A22,spigot,,circular,,,,,,,,,,,,,,,,,,,125,80,,,,,,,1,1000,,
S5,A22,spigot,,,,,,,,,,,,,,,,,,,150,100,,120,,20,,,,,1,4500,,
S6,A22,spigot,,,,,,,,,,,,,,,,,,,150,100,,120,75,,,,,,1,5500,,
S7,P1,spigot,,,,,,315,120,,,,,,,,,,,,,,,,,,,,,,1,,,
F1,S7,flexible,,,,,,315,1200,,,,,,,,,,,,,,,,,,,,,,1,,,
B1,P1,straight,,flat-oval,,525,150,,6000,,,,,,,,,,,,,,,,,,,,,,1,,,
B2,B1,bend,,flat-oval,height,525,150,,,90,200,,,,,,,,,,,,,,,,,,,,,,,
B3,B2,reducer,,flat-oval,,525,150,,400,,,,,,,400,150,,,,,,,,,,,,,,,,,
B4,B3,tee,,flat-oval,,400,150,,500,,,,,,rectangular,,,,,,150,100,,100,,,,,,,,,,
B5,B4,offset,straight,flat-oval,,400,150,,700,,,,,,,,,,150,,,,,,,,,,,,,,,
B6,B5,cap,,flat-oval,,400,150,,,,,,,,,,,,,,,,,,,,,,,,,,,
C1,P1,straight,,circular,,,,500,6000,,,,,,,,,,,,,,,,,,,,,,1,,,
C2,C1,tee,,,,,,500,600,,,,,,,,,,,,,,250,120,,,,,,,,,,
C3,C2,tee,,,,,,500,700,,,,,,,,,,,,300,200,,120,60,,,,,,,,,
C4,C3,breeches,,,,,,500,600,,,,,,,,,,300,,,,355,,,,,,,,,,,
C5,C4/branch,bend,mitred,,,,,355,,30,,,100,,,,,,,,,,,,,,,,,,,,,
C6,C4/branch2,plenum,,,,600,400,,500,,,,,,,,,,,,,,,,,,,,,,,,,
C7,C6,inline,,,,300,200,,450,,,,,,,,,,,,,,,,,,,,,,,,2.5,
C8,C5,bend,,,,,,355,,90,,100,,,,,,,,,,,,,,,,,,,,,,out
`

// Follows reports whether a row of EveryKind has an area in closed form; the
// others are integrals.
func Follows(tag string) bool {
	switch tag {
	case "A21", "A25", "S4", "B3", "B5", "C2", "C4":
		return false
	}
	return true
}

// Read reads a schedule in CSV and measures it.
func Read(csv string, o takeoff.Options) (*takeoff.Takeoff, error) {
	t := takeoff.New(o)
	info, err := schedule.ReadFrom("test.csv", []byte(csv), func(r *takeoff.Row) error {
		t.Add(r)
		return nil
	})
	if err != nil {
		return nil, err
	}
	t.Finish(info.Schedule, info.Faults, info.Notes)
	return t, nil
}

// Change sets one cell of a schedule in CSV without quotes, by tag and heading.
func Change(csv, tag, heading, value string) string {
	lines := strings.Split(csv, "\n")
	column := -1
	for i, h := range strings.Split(lines[0], ",") {
		if h == heading {
			column = i
		}
	}
	for i, l := range lines {
		if cells := strings.Split(l, ","); cells[0] == tag && column >= 0 {
			cells[column] = value
			lines[i] = strings.Join(cells, ",")
		}
	}
	return strings.Join(lines, "\n")
}
