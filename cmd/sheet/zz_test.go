package sheet_test
import ("testing";"maltwright/cmd/sheet";"maltwright/lang/model";"fmt")
func TestZZ(t *testing.T){
 examples(t, func(t *testing.T, p *model.Process){ for _, size := range []sheet.Size{sheet.A4, sheet.Letter} { _,s:=made(t,p,sheet.Options{Start:begins,Size:size,Begin:"maltwright begin x.malt"})
 used:=0.0
 n:=0
 for _,pg:=range s.Pages { if len(pg.Of)>=7 && pg.Of[:7]=="dangers" { n++; for _,b:=range pg.Blocks { used+=b.Tall(size)+sheet.Gap } } }
 if n>1 {} ; fmt.Println(t.Name(),size.Name,len(s.Pages),n,used-sheet.Gap,size.Room()) } })
}
