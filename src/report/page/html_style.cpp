#include "report/page/html_style.hpp"

namespace jointwright {

// A sheet of paper on the bench: the ticks of a rule along the top, pencil lines between the entries, verdicts like shop stamps.
const std::string_view kPageStyle = R"css(
:root{color-scheme:light dark;--bench:#e9e1d1;--sheet:#fdfaf2;--ink:#2a2520;--soft:#5d5348;--line:#cdc1aa;--track:#e6dcc8;--pencil:#2b536f;
--fail:#98201a;--tell:#5b3a86;--warn:#784c00;--pass:#2a5d33;
--book:"Iowan Old Style","Palatino Linotype",Palatino,"Book Antiqua",Georgia,"DejaVu Serif",serif;--plain:Candara,Optima,"Gill Sans","Noto Sans","DejaVu Sans",sans-serif}
@media (prefers-color-scheme:dark){:root{--bench:#151210;--sheet:#211d19;--ink:#ece4d6;--soft:#bcb09e;--line:#4d4539;--track:#3a342b;--pencil:#9fc6e2;
--fail:#ff9f92;--tell:#cfb6f6;--warn:#f0be66;--pass:#a3d6a0}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;background:var(--bench);color:var(--ink);font:1rem/1.5 var(--plain);overflow-wrap:anywhere}
.sheet{max-width:60rem;margin:0 auto;background:var(--sheet);padding:0 1rem 2rem;border-inline:1px solid var(--line)}
.rule{height:1.1rem;margin:0 -1rem 1.2rem;border-bottom:1px solid var(--soft);
background:repeating-linear-gradient(90deg,var(--soft) 0 1px,transparent 1px 4rem) bottom/100% 100% no-repeat,
repeating-linear-gradient(90deg,var(--soft) 0 1px,transparent 1px 2rem) bottom/100% 65% no-repeat,
repeating-linear-gradient(90deg,var(--line) 0 1px,transparent 1px .5rem) bottom/100% 38% no-repeat}
h1,h2,h3{font-family:var(--book);font-weight:600;line-height:1.2;text-wrap:balance}
h1{font-size:clamp(1.5rem,1.1rem + 2.2vw,2.3rem);margin:0 0 .6rem}
h2{font-size:1.3rem;margin:2.4rem 0 .9rem;padding-bottom:.25rem;border-bottom:2px solid var(--ink)}
h3{font-size:1.06rem;margin:0}
ul+h3,article+h3{margin-top:1.4rem}
p,ul,ol,dl{margin:.5rem 0}
a{color:var(--pencil)}
a:focus-visible,summary:focus-visible{outline:2px solid var(--pencil);outline-offset:2px}
.facts{display:flex;flex-wrap:wrap;gap:0 1.4rem;margin:0 0 1rem;border:1px solid var(--line);border-width:1px 0}
.facts div{padding:.35rem 0;flex:1 1 auto;max-width:100%}
dt{color:var(--soft);font-size:.86rem}
dd{margin:0}
.verdict{display:flex;gap:.9rem;align-items:flex-start;border-left:5px solid var(--mark);padding:.2rem 0 .2rem .9rem;margin:1rem 0}
.verdict p{margin:0}
.verdict .say{font:1.2rem/1.35 var(--book)}
.verdict .sign{width:2.6rem;height:2.6rem}
.word{color:var(--mark);font-weight:700;letter-spacing:.04em;text-transform:uppercase;font-family:var(--plain);font-size:.92em}
.fail{--mark:var(--fail)}.tell{--mark:var(--tell)}.warn{--mark:var(--warn)}.pass{--mark:var(--pass)}
.sign{flex:none;width:1.35rem;height:1.35rem;fill:none;stroke:var(--mark);stroke-width:2;stroke-linejoin:round;stroke-linecap:round;vertical-align:-.3rem}
.first li{margin:.4rem 0;padding-left:.2rem}
.first li::marker{font-family:var(--book);font-weight:700}
nav ul{display:flex;flex-wrap:wrap;gap:.2rem 1.2rem;list-style:none;padding:0;margin:1rem 0 0;font-size:.94rem}
nav a{display:inline-block;padding:.3rem 0}
.soft{color:var(--soft)}
table{border-collapse:collapse;width:100%;margin:.6rem 0 1.2rem;font-variant-numeric:tabular-nums}
caption{text-align:left;color:var(--soft);padding-bottom:.3rem}
th,td{text-align:left;vertical-align:top;padding:.35rem .8rem .35rem 0;border-bottom:1px solid var(--line)}
thead th{font-weight:400;color:var(--soft);font-size:.86rem;border-bottom-color:var(--soft)}
tbody th{font-weight:600}
.plain li{margin:.3rem 0}
article{border-top:1px solid var(--line);padding:1rem 0}
article:first-of-type{border-top:0;padding-top:.2rem}
.top{display:flex;flex-wrap:wrap;gap:.1rem .7rem;align-items:baseline}
.top .share{margin-left:auto;font-variant-numeric:tabular-nums}
.shapes{position:absolute;width:0;height:0}
.bar{display:block;width:100%;height:16px;overflow:visible;margin:.35rem 0}
.bar .track{fill:var(--track)}.bar .used{fill:var(--mark)}
.bar .limit{stroke:var(--ink);stroke-width:2}.bar .off{fill:none;stroke:var(--sheet);stroke-width:2}
.remedy{border-left:3px solid var(--pencil);padding-left:.7rem}
.label{color:var(--soft)}
.numbers{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,8rem),1fr));gap:.3rem 1rem}
.numbers dd{font-variant-numeric:tabular-nums}
summary{cursor:pointer;color:var(--pencil);padding:.3rem 0;width:fit-content}
.working{padding-left:1.6rem}
.working li{margin:.6rem 0}
.working code{display:block;font:1em/1.5 var(--book);font-style:italic}.working sub,.working sup{font-size:.72em;line-height:0}
.working strong{display:block;font-weight:600}
.working small{display:block;color:var(--soft);font-size:.88rem}
.passes{list-style:none;padding:0}
.passes>li{border-top:1px solid var(--line);padding:.5rem 0}
.passes .top{flex-wrap:nowrap}
.passes .top>span:nth-child(2){flex:1;min-width:0}
.lead figure{margin:.6rem 0}
.caution{border:1px solid var(--line);border-left:3px solid var(--warn);padding:.4rem .7rem;font-size:.94rem}
.stop{--mark:var(--fail);border-left-color:var(--fail)}
.box{width:1rem;height:1rem;fill:none;stroke:var(--soft);stroke-width:1.6;margin-right:.55rem;flex:none;vertical-align:-.12rem}
.ticks{list-style:none;padding:0}.ticks li{display:flex;margin:.4rem 0}.ticks .box{margin-top:.28rem}
.charts{columns:2 18rem;column-gap:2.4rem}
.chart,.under{break-inside:avoid;max-width:28rem;margin:0 0 1.4rem}
.chart .drawing text{font-size:12.5px}.chart .drawing .name{font-weight:600}.drawing .over{paint-order:stroke;stroke:var(--sheet);stroke-width:4px;stroke-linejoin:round}
.curve{fill:none;stroke:var(--pencil);stroke-width:2}.line{fill:none}
.tick,.zero{stroke:var(--line);stroke-width:1}.zero{stroke:var(--soft)}
.span{stroke:var(--soft);stroke-width:2}.today{stroke:var(--ink);stroke-width:2}
.dry{fill:var(--sheet);stroke:var(--warn);stroke-width:1.8}.damp{fill:var(--pencil)}
.used{fill:var(--mark)}.drawing .said{fill:var(--mark);font-weight:700}.passing{stroke:var(--ink);stroke-width:1.6}.failing{stroke:var(--ink);stroke-width:1.6;stroke-dasharray:3 2}
.chart .off{fill:none;stroke:var(--sheet);stroke-width:2}
.small{font-size:.88rem}.small ul,.small dl{columns:2 20rem;column-gap:2rem;padding-left:1.1rem}.small dl{padding:0}.small li{margin:.15rem 0}
.small dl div{break-inside:avoid;margin-bottom:.7rem}.small dt{color:var(--ink);font-weight:600;font-size:1em}.small dd{margin:.1rem 0}
figure{margin:1rem 0}
figcaption{color:var(--soft);font-size:.9rem}
.drawing{display:block;width:100%;height:auto;overflow:hidden}
.corner{max-width:40rem}
.drawing text{font:14px var(--plain);fill:var(--ink)}
.drawing .number{font-weight:700;fill:var(--mark)}
.w0{--h:34;--s:58%}.w1{--h:18;--s:52%}.w2{--h:46;--s:38%}.w3{--h:6;--s:40%}
.l0{--l:50%}.l1{--l:58%}.l2{--l:67%}.l3{--l:76%}.l4{--l:84%}
.w0,.w1,.w2,.w3{fill:hsl(var(--h) var(--s) calc(var(--l) - var(--dim)))}
.e{--s:38%;--dim:calc(var(--night) + 9%)}
:root{--night:0%;--dim:var(--night);--stroke:#3a2a1a;--rim:var(--stroke)}
@media (prefers-color-scheme:dark){:root{--night:9%;--stroke:#21160c;--rim:#d9c8ac}}
.grain,.edge,.rim{fill:none;stroke:var(--stroke);stroke-linecap:round;stroke-linejoin:round}
.grain{stroke-width:.5;opacity:var(--grain,.42)}.edge{stroke-width:.8}.rim{stroke:var(--rim);stroke-width:1.5}
.dim,.leader{stroke:var(--ink);stroke-width:.8;fill:none}
.spot{fill:var(--mark,var(--ink))}
.mark{fill:var(--sheet);stroke:var(--mark);stroke-width:1.6}
.close{margin:.8rem 0}.close .drawing{max-width:34rem}
.rim2{stroke:var(--rim);stroke-width:1.2}.made{fill:none;stroke:var(--ink);stroke-width:1;stroke-dasharray:5 4}
.pale{opacity:.35;--grain:0}.path{stroke:var(--ink);stroke-width:.7;stroke-dasharray:3 3}
.along,.move,.halo{fill:none;stroke-linecap:round;stroke-linejoin:round}
.halo{stroke:var(--sheet);stroke-width:4.5}.along{stroke:var(--ink);stroke-width:1.4}.move{stroke:var(--pencil);stroke-width:2.2}
.drawing .name{paint-order:stroke;stroke:var(--sheet);stroke-width:4px;stroke-linejoin:round}
.views{display:flex;flex-wrap:wrap;gap:.4rem 1.6rem;align-items:flex-end}
.views figure{margin:.4rem 0;width:min(100%,var(--wide))}
footer{margin-top:2.4rem;border-top:1px solid var(--soft);padding-top:.6rem;color:var(--soft);font-size:.88rem}
@media (min-width:58rem){article .close{float:right;width:25rem;margin:.2rem 0 .6rem 1.8rem}article::after,.passes>li::after{content:"";display:block;clear:both}.passes .close{float:right;width:23rem;margin:.2rem 0 .6rem 1.8rem}.lead{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1.05fr);gap:0 2rem;align-items:start}.lead .corner{max-width:none}.lead h2{margin-top:1.2rem}}
@media (min-width:48rem){.sheet{padding:0 3rem 3rem}.rule{margin:0 -3rem 1.6rem}.passes .bar{width:40%}}
@media (max-width:42rem){table,tbody,tr,th,td,caption{display:block}thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
tr{padding:.5rem 0;border-bottom:1px solid var(--line)}th,td{border:0;padding:0}td{display:inline-block;margin-right:1.1rem}td::before{content:attr(data-label) " ";color:var(--soft);font-size:.86rem}}
@media print{:root{color-scheme:light;--night:0%;--stroke:#3a2a1a;--rim:var(--stroke);--bench:#fff;--sheet:#fff;--ink:#000;--soft:#4a4238;--line:#b5aa96;--track:#e6e0d4;--pencil:#1d3f57;
--fail:#8a1512;--tell:#4d2f77;--warn:#653f00;--pass:#1f4d28}
.views{gap:0 5mm;flex-wrap:nowrap}.views figure{width:calc(var(--wide)*.62)}.close{float:right;width:76mm;margin:0 0 3mm 5mm}article::after,.passes>li::after{content:"";display:block;clear:both}.passes>li:has(details[open]){break-inside:auto}.passes .working{columns:2;column-gap:8mm}.more{display:none}.corner{max-width:130mm}.cut{break-before:page}.charts{columns:2;column-gap:8mm}.chart,.under{margin:0 0 5mm}
.passes .bar{display:none}.passes>li{break-inside:avoid;padding:.3rem 0}.passes .top{break-after:auto}
.drawing path,.drawing rect,.drawing circle{-webkit-print-color-adjust:exact;print-color-adjust:exact}
@page{margin:15mm}
html{font-size:9.5pt}body{line-height:1.4}.sheet{max-width:none;border:0;padding:0}.rule,nav{display:none}
.bar rect,.verdict{-webkit-print-color-adjust:exact;print-color-adjust:exact}
h1{font-size:18pt}h2{font-size:13pt;margin-top:7mm}h2,h3,caption,.top,.bar,summary,p.label,.small>p{break-after:avoid}
figure,.views,table,tr,.caution,.ticks li,.top,.numbers,.working li,.plain li{break-inside:avoid}.working,.numbers{margin:.2rem 0}.working li{margin:.25rem 0}details{font-size:.92em}thead{display:table-header-group}
p,li{orphans:3;widows:3}footer{break-before:avoid;margin-top:4mm}
.small{font-size:8.3pt;line-height:1.3}.small ul,.small dl{columns:3;column-gap:6mm}.small dd{display:inline}.small dd::after{content:" "}.small li,.small dl div{margin:0 0 .8mm}
article details::details-content{content-visibility:visible;display:block;height:auto;opacity:1}.passes details:not([open]){display:none}summary{color:var(--soft);list-style:none}}
)css";

} // namespace jointwright
