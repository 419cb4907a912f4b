namespace Laydown.Output.Documents;

/// <summary>Fonts and style sheet of the set-up page.</summary>
internal static class SetUpStyle
{
    /// <summary>The typefaces, inside the page.</summary>
    internal static string Fonts { get; } =
        Face("B612", 400, "B612-Regular.otf") + Face("B612", 700, "B612-Bold.otf") + Face("B612 Mono", 400, "B612Mono-Regular.otf") + Face("B612 Mono", 700, "B612Mono-Bold.otf");

    /// <summary>The style sheet: tablet first, dark rooms, A4.</summary>
    internal const string Sheet = """
        :root{--ink:#161616;--quiet:#505050;--edge:#767676;--act:#00566b;--stop:#a3142a;--warn:#7a4a00;--sheet:#fff;--line:1px solid var(--ink);color-scheme:light dark}
        @media (prefers-color-scheme:dark){:root{--ink:#ededed;--quiet:#b4b4b4;--edge:#8c8c8c;--act:#7cc9dc;--stop:#ff9aa2;--warn:#f0bd62;--sheet:#1b1b1b}}
        *{box-sizing:border-box}
        body{margin:0;background:var(--sheet);color:var(--ink);font:400 1.125rem/1.45 B612,sans-serif;-webkit-text-size-adjust:100%}
        main{max-width:62rem;margin:0 auto;padding:1.5rem 1.5rem 3rem}
        header{display:flex;justify-content:space-between;align-items:end;gap:1.5rem;border-bottom:3px solid var(--ink);padding-bottom:.9rem}
        .kind{margin:0;font-size:.95rem;color:var(--quiet)} .kind b{margin-right:.8rem}
        h1{margin:.1rem 0 .25rem;font:700 clamp(1.9rem,6.2vw,3.1rem)/1.05 "B612 Mono",monospace;letter-spacing:-.03em}
        .subject{margin:0;font-weight:700;font-size:1.2rem} .due{font:400 1rem "B612 Mono",monospace;margin-left:.8rem;white-space:nowrap}
        .qr{width:8.2rem;flex:none;background:#fff;fill:#000}
        .figures{display:grid;grid-template-columns:repeat(4,1fr);margin:0;border-bottom:3px solid var(--ink)}
        .figures>div{padding:.7rem .9rem .8rem;border-left:var(--line);border-top:var(--line)}
        .figures>div:nth-child(4n+1){border-left:0;padding-left:0} .figures>div:nth-child(-n+4){border-top:0}
        .figures dt{font-size:.9rem;color:var(--quiet)} .figures dd{margin:0;font-size:1.05rem}
        .figures b{font-size:1.9rem;line-height:1.25} .figures small{display:block;font-size:.86rem;line-height:1.35;color:var(--quiet)}
        .figures>div:first-child b{color:var(--act)}
        section{display:grid;grid-template-columns:10rem minmax(0,1fr);gap:0 1.5rem;border-top:var(--line);padding:1rem 0 1.1rem} header+dl+section{border-top:0}
        h2{margin:0;font-size:1.15rem;line-height:1.35} section p{margin:0 0 .45rem}
        .refused{border:0;border-left:10px solid var(--stop);padding-left:1rem;margin:1rem 0} .refused h2{color:var(--stop)}
        .readings{display:grid;grid-template-columns:repeat(auto-fit,minmax(5.9rem,1fr));gap:.6rem;margin-top:.7rem}
        .readings label{border:1px solid var(--ink);padding:.25rem .5rem .35rem;font-size:.86rem;color:var(--quiet)} .readings .own{border:3px solid var(--act);color:var(--act)}
        .readings span{display:flex;align-items:baseline;gap:.25rem} .readings input{width:100%;min-height:48px;border:0;background:none;color:var(--ink);font:700 1.5rem "B612 Mono",monospace}
        figure{margin:0 0 .6rem} figure svg{width:100%;height:auto;display:block} figcaption{font-size:.95rem;color:var(--quiet);margin-bottom:.3rem}
        .rows{display:grid;grid-template-columns:9rem minmax(0,1fr);gap:.3rem 1rem;margin:0} .rows dt{font-weight:700} .rows dd{margin:0}
        .because{margin-top:.6rem;color:var(--quiet);font-size:1rem}
        .wide{overflow-x:auto} table{border-collapse:collapse;width:100%} th,td{padding:.4rem .6rem;text-align:right;border-top:1px solid var(--edge);font-weight:400}
        td{font-variant-numeric:tabular-nums;white-space:nowrap} thead th{border:0;font-size:.86rem;color:var(--quiet);white-space:nowrap} th:first-child{text-align:left;padding-left:0} tbody th{font-weight:700;white-space:nowrap} tbody th small{font-weight:400;color:var(--quiet)}
        td.note,thead th:last-child{text-align:left;white-space:normal} .low td:nth-child(5),.low .note{color:var(--stop);font-weight:700}
        .ticks{list-style:none;margin:0;padding:0} .ticks li{display:grid;grid-template-columns:48px minmax(0,1fr);gap:.8rem;align-items:start;border-top:1px solid var(--edge)} .ticks li:first-child{border-top:0}
        .ticks input{appearance:none;width:44px;height:44px;margin:4px 0;border:2px solid var(--ink);background:var(--sheet)} .ticks input:checked{background:linear-gradient(45deg,transparent 46%,var(--ink) 46% 54%,transparent 54%),linear-gradient(-45deg,transparent 46%,var(--ink) 46% 54%,transparent 54%),var(--sheet)}
        .ticks label{padding:.72rem 0;min-height:52px} .ticks input:checked+label{color:var(--quiet)}
        input:focus-visible,textarea:focus-visible,summary:focus-visible,.wide:focus-visible{outline:3px solid var(--act);outline-offset:2px}
        .cautions{margin:0;padding:0;list-style:none} .cautions li{margin-bottom:.5rem;padding-left:1rem;border-left:3px solid var(--warn)} .cautions li:last-child{border-color:var(--ink);font-weight:700}
        .sign{display:grid;grid-template-columns:1fr 1fr;gap:1rem 1.5rem} .sign label{font-size:.92rem;color:var(--quiet);display:block} .sign input,.sign textarea{display:block;width:100%;min-height:52px;border:0;border-bottom:2px solid var(--ink);background:none;color:var(--ink);font:400 1.2rem B612,sans-serif} .notes{grid-column:1/-1}
        summary{min-height:48px;padding:.7rem 0;cursor:pointer} .why dt{margin-top:.5rem} .why dd{margin:0;font-size:.95rem;color:var(--quiet);overflow-wrap:anywhere}
        footer{display:flex;justify-content:space-between;gap:1rem;border-top:var(--line);padding-top:.6rem;font-size:.9rem;color:var(--quiet)}
        @media screen and (max-width:58rem){section{grid-template-columns:minmax(0,1fr);gap:.5rem}h2{font-size:1.3rem}}
        @media screen and (max-width:46rem){main{padding:1rem}.figures{grid-template-columns:1fr 1fr}.figures>div:nth-child(n){border-left:var(--line);border-top:var(--line);padding-left:.8rem}.figures>div:nth-child(2n+1){border-left:0;padding-left:0}.figures>div:nth-child(-n+2){border-top:0}.rows{grid-template-columns:1fr;gap:0}.rows dd{margin-bottom:.4rem}.qr{width:6rem}}
        @page{size:A4;margin:12mm}
        @media print{:root{--ink:#161616;--quiet:#505050;--edge:#767676;--act:#00566b;--stop:#a3142a;--warn:#7a4a00;--sheet:#fff;color-scheme:light}body{font-size:9.6pt}main{padding:0;max-width:none}section{grid-template-columns:26mm minmax(0,1fr);padding:2.4mm 0}section,figure,.ticks li,tr{break-inside:avoid}#why,#why+div{break-inside:auto}.figures b{font-size:15pt}.qr{width:24mm}.ticks input{width:4.4mm;height:4.4mm;border-width:1px;margin:.6mm 0}.ticks li{grid-template-columns:6mm 1fr;border:0}.ticks label{padding:.2mm 0;min-height:0}.readings input{min-height:8mm}.sign input{min-height:8mm}figure svg{max-height:92mm}details:not([open]){display:none}}

        """;

    private static string Face(string family, int weight, string file) =>
        Invariant($"@font-face{{font-family:\"{family}\";font-weight:{weight};src:url(data:font/otf;base64,{Convert.ToBase64String(PageFonts.Bytes(file))}) format(\"opentype\")}}\n");
}
