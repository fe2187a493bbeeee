// The looks of the file: on a screen, and on paper.

package html

import (
	"fmt"

	"pullscore/render/sheet"
)

// style returns the rules for a paper. Drawings fill their pages, so that what
// is drawn in millimetres prints in millimetres; words have margins of their
// own. On a screen, drawings to be printed 1:1 keep their size, and others
// shrink as far as they can be read.
func style(paper sheet.Paper) string {
	return `:root{color-scheme:light dark;--ink:#111;--soft:#5c5c5c;--line:#8a8a8a;--page:#fff;--link:#005a8e}
@media screen and (prefers-color-scheme:dark){:root{--ink:#f2f2f2;--soft:#b4b4b4;--line:#808080;--page:#141414;--link:#8fd0f5}}
*{box-sizing:border-box}
body{margin:0 auto;padding:1rem;max-width:300mm;background:var(--page);color:var(--ink);font:16px/1.45 Go,Arial,Helvetica,'Liberation Sans',Arimo,sans-serif}
h1{font-size:1.6rem;margin:.2em 0 .6em}
h2{font-size:1.25rem;margin:2em 0 .4em}
h2.scene{border-top:3px solid var(--ink);padding-top:.5em}
h3{font-size:1.1rem;margin:2em 0 .2em}
h4{font-size:1rem;margin:1.2em 0 .3em}
p{margin:.3em 0;overflow-wrap:anywhere}
.setup{color:var(--soft)}
.assumed{text-decoration:underline dotted}
a{color:var(--link)}
summary{padding:.5rem 0;font-weight:bold}
nav a{display:inline-block;padding:.3rem 0;overflow-wrap:anywhere}
.scroll,.sheet{overflow-x:auto;max-width:100%}
table{border-collapse:collapse;font-size:.9rem}
th,td{text-align:left;vertical-align:top;padding:.25rem .6rem .25rem 0;border-bottom:1px solid var(--line);white-space:nowrap}
th{color:var(--soft);font-weight:normal}
td.text{white-space:normal;min-width:9rem;overflow-wrap:anywhere}
@media screen and (max-width:44rem){
.rows,.rows tbody,.rows tr{display:block}
.rows thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.rows tr{padding:.45rem 0;border-bottom:1px solid var(--line)}
.rows td{display:inline-block;max-width:100%;padding:.05rem 1rem .05rem 0;border:0;white-space:normal;overflow-wrap:anywhere}
.rows td.text{display:block;min-width:0;padding-right:0}
.rows td::before{content:attr(data-head) "\a0 ";color:var(--soft)}
.rows td:empty{display:none}
}
@media screen{.paper{display:none}}.log input,.log button,.log-send input,.log-send button{font:inherit;color:inherit;background:var(--page);border:1px solid var(--line);border-radius:4px;min-height:2.75rem;padding:.3rem .6rem;max-width:100%}
.log input[type=radio]{min-height:1.5rem;width:1.5rem;height:1.5rem;margin:.4rem;vertical-align:middle}.log .taps{display:flex;flex-wrap:wrap;gap:.4rem;margin:.4rem 0}.log .taps button{flex:1 0 4.5rem;min-height:3.2rem;font-weight:bold}fieldset{border:1px solid var(--line);border-radius:4px;margin:.6rem 0;padding:.4rem .7rem;min-width:0}legend{font-weight:bold;overflow-wrap:anywhere}
.fields label,.choice label{display:inline-block;margin:.25rem .9rem .25rem 0}
.sheet{border:1px solid var(--line)}
.sheet svg{display:block;min-width:860px;width:100%;height:auto}
` + fmt.Sprintf(`.sheet.true svg{width:%[1]gmm;min-width:%[1]gmm}
@page{size:%[1]gmm %[2]gmm;margin:10.5mm 12mm}
@page drawing{margin:0}
@media print{
:root{color-scheme:light}
body{padding:0;max-width:none;font-size:8.5pt;line-height:1.3}
nav,h4.figure,.screen{display:none}
h1{font-size:20pt}
h2{font-size:10pt;margin:4mm 0 1mm}
h2.scene{display:none}
h3{font-size:14pt;margin-top:0}
h4{font-size:10pt;margin:3mm 0 1mm}
p{margin:.3mm 0}
section>.words{break-before:page}
h2,h3,h4{break-after:avoid}
tr{break-inside:avoid}
.scroll{overflow:visible}
table{font-size:7.5pt}
th,td{padding:.6mm 3mm .6mm 0}
td.text{min-width:18mm}
.sheet{page:drawing;break-before:page;break-inside:avoid;overflow:hidden;border:0;max-width:none;width:%[1]gmm;height:%.1[3]fmm}
.sheet svg,.sheet.true svg{width:%[1]gmm;min-width:%[1]gmm;height:%[2]gmm}
}
`, paper.W, paper.H, paper.H-0.1)
}
