/**
 * The look of the sheet. Read at arm's length on a screen, light or dark as the reader's system says; black on white on paper, 9 points
 * and more. Meaning is in words and lines; no rule here gives a colour a meaning.
 */
export const sheetStyle = `
:root{color-scheme:light dark;--ink:#111;--paper:#fff;--soft:#555;--rule:#777;--fill:#ececec}
@media (prefers-color-scheme:dark){:root{--ink:#f1f1ee;--paper:#15171a;--soft:#b9bcc0;--rule:#8b9096;--fill:#262a2f}}
*{box-sizing:border-box}
html{font:18px/1.4 system-ui,sans-serif;background:var(--paper);color:var(--ink);-webkit-text-size-adjust:100%}
body{margin:0 auto;padding:0 1rem 3rem;max-width:76rem;overflow-wrap:anywhere}
h1,h2,h3{line-height:1.15;margin:0}
h1{font-size:1.9rem}h2{font-size:1.6rem}h3{font-size:1.05rem;margin:.9rem 0 .3rem}
p{margin:.35rem 0}
a{color:inherit;text-underline-offset:.15em}
:focus-visible{outline:3px solid var(--ink);outline-offset:2px}
small{font-size:.78em;color:var(--soft)}
.skip{position:absolute;left:-100rem}.skip:focus{left:.5rem;top:.5rem;background:var(--paper);padding:.4rem}
header.top{padding:1rem 0 .6rem;border-bottom:3px solid var(--ink)}
header.top nav ul{list-style:none;display:flex;flex-wrap:wrap;gap:.2rem 1.2rem;padding:0;margin:.5rem 0 0}
nav a{display:inline-block;padding:.25rem 0}
.tools button{font:inherit}.tools button[hidden]{display:none}
.tools{display:flex;flex-wrap:wrap;gap:.4rem 1.4rem;margin-top:.4rem}
.tools label,.checks label{display:inline-flex;gap:.5rem;align-items:baseline;cursor:pointer}
input[type=checkbox]{width:1.15em;height:1.15em;flex:none;accent-color:var(--ink);align-self:center}
.page{padding-top:1.6rem}
.page>header{display:flex;flex-wrap:wrap;gap:.1rem 1.2rem;align-items:baseline;border-bottom:2px solid var(--ink);padding-bottom:.3rem;margin-bottom:.6rem}
.page>header p{margin:0;color:var(--soft)}
.stop{border:4px solid var(--ink);padding:.5rem .8rem;font-weight:700;font-size:1.15em;margin:.6rem 0}
.pair,.pictures,.facts{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(22rem,100%),1fr));gap:.8rem 1.6rem;align-items:start}
table{border-collapse:collapse;width:100%}
caption{text-align:left;padding:.3rem 0;font-size:1.1rem}
.mark{border:1px solid var(--ink);padding:0 .3em}
th,td{text-align:right;padding:.28rem .3rem;border-bottom:1px solid var(--rule);vertical-align:baseline}
th[scope=col]{border-bottom:2px solid var(--ink);font-weight:600;font-size:.85rem}
th:first-child{text-align:left}
tbody th{font-weight:600}
tbody th:not([scope=col]) small{display:block;font-weight:400;line-height:1.15}td.pulse{white-space:nowrap}caption small{font-size:.85rem}
td.value{font-size:1.75rem;font-weight:700;line-height:1.05;white-space:nowrap}td.value small{display:block;font-size:.85rem;font-weight:400}
td.value,td.pulse,.numbers td{font-variant-numeric:tabular-nums}
tr.limit{background:var(--fill)}
td.read{width:4.8rem;padding-left:.5rem}td.read small{display:block;line-height:1.15}td.verified{overflow-wrap:normal}
td.differs{border:4px solid var(--ink);font-weight:700}td.differs small{color:inherit}td.cannotTell{border:3px dashed var(--ink)}td.verified.notMeasured{border:2px dotted var(--ink)}
td.read input{width:100%;min-width:2.6rem;font:inherit;color:inherit;background:transparent;border:0;border-bottom:1px solid var(--rule);padding:.1rem;text-align:right}
.scroll{overflow-x:auto}.numbers :is(th,td){white-space:nowrap}.numbers :is(th,td):nth-child(2){white-space:normal;min-width:9rem;text-align:left}ul.cautions{padding-left:1.2rem;margin:.3rem 0}
figure{margin:0}figure.first{grid-column-start:1}
figure svg{display:block;width:100%;height:auto;max-width:46rem}
figcaption{font-size:.85rem;color:var(--soft)}
dl{margin:.2rem 0;display:grid;grid-template-columns:8.4rem 1fr;gap:.1rem .6rem;font-size:.88rem}
dt{font-weight:600}dd{margin:0}dd.warn{font-weight:700}
.checks{list-style:none;padding:0;margin:.4rem 0;columns:2 20rem;column-gap:1.6rem}
.checks li{break-inside:avoid;padding:.12rem 0}
.sign{display:flex;flex-wrap:wrap;gap:.6rem 1.4rem;margin-top:.7rem}
.sign label{flex:1 1 11rem;display:flex;gap:.5rem;align-items:baseline}
.sign.none{font-weight:700}
.sign input{flex:1;min-width:4rem;font:inherit;color:inherit;background:transparent;border:0;border-bottom:1px solid var(--ink)}
ol.steps{padding-left:2.2rem}ol.steps>li{padding:.35rem 0;border-bottom:1px solid var(--rule);break-inside:avoid}
ol.steps>li>label{display:flex;gap:.5rem;align-items:baseline}ol.steps input[type=checkbox]{align-self:flex-start;margin-top:.15em}ol.steps ul{list-style:none;margin:.2rem 0;padding:0}ol.steps :is(ul,.expect){display:flex;flex-wrap:wrap;gap:.1rem 1.6rem}ol.steps :is(ul,.expect):empty{display:none}.expect p{margin:.1rem 0}ol.steps ul li{font-weight:600}
.expect input{width:6rem;font:inherit;color:inherit;background:transparent;border:0;border-bottom:1px solid var(--rule);padding:.1rem}
.finding{border-left:3px solid var(--ink);padding-left:.7rem;margin:.5rem 0}
.finding.note{border-left-style:dotted}.finding.warning{border-left-style:dashed}
.gang caption{font-size:.9rem}.gang td{font-variant-numeric:tabular-nums}
.slide{border:2px solid var(--ink);padding:.6rem .8rem;margin:.8rem 0}
.slide input{width:100%;accent-color:var(--ink);height:2rem}
.slide output{display:block;font-size:1.3rem;font-weight:600;font-variant-numeric:tabular-nums}
.slide svg{max-width:16rem;width:100%;display:block}
body:has(#big:checked) .page{padding-top:.6rem}body:has(#big:checked) .page:not(.one){display:none}
body:has(#big:checked) :is(.pictures,.facts,.checks,.sign,.slide,.plain,.enter td.read,.enter th:nth-child(n+4),.findings,.gang){display:none}
body:has(#big:checked) .pair{grid-template-columns:1fr}
body:has(#big:checked) td.value{font-size:clamp(3rem,13vw,6.5rem)}
body:has(#big:checked) .enter :is(th,td.pulse,td.value small,caption){font-size:1.5rem}
@media (max-width:30rem){
html{font-size:17px}body{padding:0 .7rem 2rem}
.enter th,.enter td{padding:.3rem .15rem}td.value{font-size:1.55rem}td.read{width:3.4rem;padding-left:.2rem}td.verified{font-size:.85rem}
td.pulse{font-size:.9rem}tbody th{font-size:.92rem}
.numbers thead{position:absolute;left:-100rem}.numbers tr{display:grid;grid-template-columns:auto 1fr auto;border-bottom:1px solid var(--rule);padding:.3rem 0}
.numbers tbody :is(th,td){border:0;padding:.1rem .3rem .1rem 0;white-space:normal}.numbers tbody td:nth-child(2){min-width:0}.numbers td[data-head]{grid-column:1/-1;display:grid;grid-template-columns:5.6rem 5rem 1fr;gap:.5rem;align-items:baseline}.numbers td[data-head]::before{content:attr(data-head);text-align:left}.numbers td[data-head] small{text-align:left}
.slide output{font-size:1.05rem}.checks{columns:1}dl{grid-template-columns:1fr}dd{margin-bottom:.3rem}
}
@page{margin:9mm}
@media print{
:root{color-scheme:light;--ink:#000;--paper:#fff;--soft:#000;--rule:#000;--fill:#fff}
html{font-size:9pt;line-height:1.2}
body{max-width:none;padding:0}
header.top,.slide,.skip,.screen{display:none!important}
small,td.value small,figcaption,dl,th[scope=col]{font-size:9pt}
.page{padding:0;break-after:page}.page:last-child{break-after:auto}
h2{font-size:15pt}h3{font-size:10pt;margin:1.5mm 0 .5mm}
.page>header{padding-bottom:.5mm;margin-bottom:1mm;gap:0 4mm}
.pair,.pictures,.facts{grid-template-columns:1fr 1fr;gap:1mm 5mm}:is(.pair,.facts):has(>:only-child){grid-template-columns:1fr}.pair:has(>:only-child) .enter :is(th,td):nth-child(n+4){width:42mm}
caption{font-size:10.5pt;padding:0 0 .3mm}
th,td{padding:.4mm .8mm;border-bottom:.2mm solid #000;vertical-align:middle}
th[scope=col]{border-bottom:.5mm solid #000}
tr.limit+tr:not(.limit)>*{border-top:.7mm double #000}
th[scope=col]{font-weight:400;white-space:nowrap}
.enter small{line-height:1.05}.enter th:first-child{padding-left:0}.enter{table-layout:fixed}.enter :is(th,td):nth-child(2){width:19.5mm}.enter.fine :is(th,td):nth-child(2){width:22mm}.enter :is(th,td):nth-child(3){width:15mm}.enter :is(th,td):nth-child(4){width:11.5mm}.enter :is(th,td):nth-child(5){width:17.5mm}.enter.verified :is(th,td):nth-child(n+4){width:16.8mm}td.verified{line-height:1.05!important}:is(tr.limit,tr.short) th bdi{margin-right:1mm}:is(tr.limit,tr.short) th small{display:inline}
td.value{font-size:14pt}
.enter tbody :is(th,td){line-height:1.1}.enter tbody td.value,td.value small{line-height:.95}
td.read{border-left:.2mm solid #000;padding:.4mm .4mm}td.read input,.sign input{border:0;padding:0;height:1em}td.read input{min-width:0}
td.differs{border:.9mm solid #000}td.cannotTell{border:.5mm dashed #000}td.verified.notMeasured{border:.5mm dotted #000}
.sign input{border-bottom:.2mm solid #000}
tr,figure,.checks li,.finding{break-inside:avoid}
.one{height:100vh;display:flex;flex-direction:column;overflow:hidden}
.one>*{flex:none}
.one>.pictures{flex:0 1 auto;min-height:0;grid-auto-rows:minmax(0,auto);align-items:stretch}
.flows{height:auto;overflow:visible}.flows .sign{margin-top:3mm}
.one figure{min-height:0;display:grid;grid-template-rows:minmax(0,1fr)}
figure svg{max-width:none;min-height:0;height:100%}
.facts>div{line-height:1.12}.facts h3,.facts dl{display:inline}.facts h3{font-size:9pt;margin:0 1.2mm 0 0}dl{display:block;margin:0}dt,dd{display:inline}dt::after{content:" "}dd::after{content:"\\A";white-space:pre}
.gang caption{font-size:9pt}.gang :is(th,td){padding:0 .8mm;line-height:1.05}.checks{columns:2;column-gap:5mm;margin:.5mm 0}.checks li{padding:0;line-height:1.1}.checks label{display:flex;gap:1.5mm}
.sign{margin-top:auto;padding-top:1.5mm;gap:1mm 4mm;flex-wrap:nowrap}
/* What goes on over several printed pages has its head on each of them. */
.page:not(.one),.flows{display:table;table-layout:fixed;width:100%;border-collapse:collapse}
.page:is(:not(.one),.flows)>header{display:table-header-group;break-inside:avoid}.page:is(:not(.one),.flows)>header>*{display:inline;margin-right:4mm}.page:is(:not(.one),.flows)>header>p:last-child{display:block;padding-bottom:.5mm}
.finding{margin:.6mm 0;padding-left:2mm}
ul.cautions{padding-left:5mm}ol.steps{margin:0;padding-left:8mm}ol.steps>li{padding:.7mm 0}ol.steps>li>label{gap:2mm}ol.steps :is(ul,.expect){margin:.3mm 0 0;gap:.3mm 6mm}ol.steps p{margin:0}.expect input{width:20mm;border-bottom:.2mm solid #000;padding:0;height:1.15em}
.stop{border-width:1mm;padding:1mm 2mm;margin:1mm 0}
input[type=checkbox]{appearance:none;margin:0;width:3mm;height:3mm;border:.25mm solid #000;background:#fff}
input[type=checkbox]:checked{background:linear-gradient(45deg,transparent 44%,#000 44% 56%,transparent 56%),linear-gradient(-45deg,transparent 44%,#000 44% 56%,transparent 56%)}
}
`;
