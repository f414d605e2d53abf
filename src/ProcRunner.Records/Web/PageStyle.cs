using ProcRunner.Records.Drawings;

namespace ProcRunner.Records.Web;

/// <summary>How the page looks: on a desk, on a phone, on paper.</summary>
internal static class PageStyle
{
    /// <summary>The style sheet.</summary>
    public static string Text { get; } =
        $$"""
            :root{--ink:{{Palette.Hex(Tone.Ink)}};--quiet:{{Palette.Hex(Tone.Quiet)}};--rule:{{Palette.Hex(
                Tone.Rule
            )}};--paper:{{Palette.Hex(Tone.Paper)}};--ground:{{Palette.Hex(Tone.Ground)}};--value:{{Palette.Hex(
                Tone.Value
            )}};--attention:{{Palette.Hex(Tone.Attention)}};--attention-ground:{{Palette.Hex(Tone.AttentionGround)}}}
            *{box-sizing:border-box}
            html{color-scheme:light;background:var(--paper);-webkit-text-size-adjust:100%}
            body{margin:0 auto;padding:1.5rem 1.25rem 3rem;max-width:60rem;color:var(--ink);background:var(--paper);font:1rem/1.45 "Liberation Sans",Arimo,Helvetica,Arial,sans-serif;overflow-wrap:anywhere}
            header{border-bottom:3px solid var(--ink);padding-bottom:.6rem;margin-bottom:1rem}
            h1{font-size:1.7rem;line-height:1.2;margin:0}
            header p{margin:.2rem 0 0;color:var(--quiet)}
            h2{font-size:1.25rem;margin:2.2rem 0 .6rem;padding-bottom:.15rem;border-bottom:1px solid var(--ink);break-after:avoid}
            h3{font-size:1.05rem;margin:1.5rem 0 .4rem;break-after:avoid}
            p{margin:.5rem 0}
            .quiet{color:var(--quiet);font-size:.92rem}
            ul,ol{margin:.4rem 0;padding-left:1.4rem}
            li{margin:.25rem 0}
            dl{display:grid;grid-template-columns:minmax(9rem,max-content) 1fr;gap:.15rem 1rem;margin:.6rem 0}
            dt{color:var(--quiet)}
            dd{margin:0}
            .notice{border:1px solid var(--rule);border-left:5px solid var(--value);padding:.5rem .9rem;margin:.9rem 0;break-inside:avoid}
            .notice>strong{display:block}
            .notice.attention{border-color:var(--attention);background:var(--attention-ground)}
            .notice.attention>strong{color:var(--attention)}
            table{border-collapse:collapse;table-layout:fixed;width:100%;margin:.6rem 0 1.1rem;font-size:.86rem;line-height:1.35}
            caption{text-align:left;color:var(--quiet);padding-bottom:.3rem;font-size:.92rem}
            th,td{text-align:left;vertical-align:top;padding:.3rem .45rem;border-bottom:1px solid var(--rule)}
            thead th{background:var(--ground);border-bottom:1px solid var(--ink)}
            tbody tr{break-inside:avoid}
            tr.attention>*{background:var(--attention-ground)}
            figure{margin:1rem 0 1.4rem;break-inside:avoid;overflow-x:auto}
            figcaption{font-weight:bold;margin-bottom:.3rem}
            svg.drawing{display:block;width:100%;min-width:calc(var(--w)*1.15);height:auto;font-family:inherit}
            .code{display:flex;flex-wrap:wrap;gap:1rem;align-items:center;border:1px solid var(--ink);padding:.7rem 1rem;margin:1rem 0;break-inside:avoid}
            .code svg.drawing{width:8rem;min-width:8rem}
            .code b{display:block;font:bold 1.2rem/1.4 "Liberation Mono",Cousine,monospace;letter-spacing:.04em}
            .code p{flex:1 1 14rem;margin:0}
            .across{position:fixed;inset:0;display:flex;align-items:center;justify-content:center;pointer-events:none;z-index:2}
            .across span{font-size:16vmin;font-weight:bold;color:var(--attention);opacity:.13;transform:rotate(-30deg);letter-spacing:.1em}
            .paper{break-after:page;height:0}
            nav ul{columns:2;column-gap:2rem;margin:.2rem 0 1rem}
            nav a{color:var(--value)}
            footer{margin-top:2.5rem;border-top:1px solid var(--ink);padding-top:.5rem;color:var(--quiet);font-size:.9rem}
            @media screen and (max-width:44rem){
            body{padding:1rem .8rem 2rem}
            h1{font-size:1.4rem}
            nav ul{columns:1}
            dl{grid-template-columns:1fr;gap:0}
            dt{margin-top:.4rem}
            .notice{padding:.5rem .7rem}
            table,tbody,tr,th,td{display:block}
            thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
            caption{display:block}
            tbody tr{border-top:2px solid var(--ink);padding:.2rem 0 .4rem}
            tbody th,tbody td{border:0;padding:.12rem .3rem}
            tbody td{display:grid;grid-template-columns:7.5rem 1fr;gap:.5rem}
            tbody td::before{content:attr(data-label);color:var(--quiet)}
            tbody td:empty{display:none}
            }
            @page{size:A4;margin:12mm 13mm 13mm}
            @media print{
            html{font-size:8.4pt}
            body{max-width:none;padding:0;line-height:1.3}
            li{margin:.1rem 0}
            main>dl:first-of-type{grid-template-columns:max-content 1fr max-content 1fr;gap:.1rem .8rem}
            .notice{margin:.4rem 0;padding:.3rem .7rem}
            figure{margin:.5rem 0 .6rem}
            .appendix~table{font-size:.8rem;line-height:1.25}
            .appendix~table th,.appendix~table td{padding:.12rem .4rem}
            h1{font-size:17pt}
            h2{font-size:13pt;margin-top:12pt}
            figure{overflow:visible}
            svg.drawing{min-width:0;max-width:178mm}
            main>figure:first-of-type>svg.drawing{max-width:135mm}
            main>h2:first-of-type{margin-top:6pt}
            .code{margin:.5rem 0;padding:.3rem .8rem}
            .code svg.drawing{width:20mm;min-width:20mm}
            a{color:inherit;text-decoration:none}
            }
            """;
}
