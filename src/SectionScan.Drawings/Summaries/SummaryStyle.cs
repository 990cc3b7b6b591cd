namespace SectionScan.Drawings.Summaries;

/// <summary>The look of summary pages. Drawings keep their white paper in the dark scheme, since they are made for it.</summary>
internal static class SummaryStyle
{
    public const string Css = """
        :root { color-scheme: light dark; --paper: #fff; --text: #1c1e21; --soft: #565c64; --line: #d5d9de; --accent: #1f4e8c;
          --note: #eef3f9; --caution: #fdf1e4; --caution-line: #b85c00; }
        @media (prefers-color-scheme: dark) {
          :root { --paper: #16181b; --text: #e8eaed; --soft: #a9b0b8; --line: #3a4047; --accent: #9cc2f5;
            --note: #1e2732; --caution: #33261a; --caution-line: #e8a25a; } }
        * { box-sizing: border-box; }
        body { margin: 0; background: var(--paper); color: var(--text); font: 1rem/1.55 system-ui, "Segoe UI", "Noto Sans", sans-serif; }
        header, main, footer { max-width: 64rem; margin: 0 auto; padding: 0 1rem; }
        header { padding-top: 2.5rem; }
        h1 { font-size: 1.9rem; line-height: 1.2; margin: 0 0 .75rem; }
        h2 { font-size: 1.3rem; line-height: 1.3; margin: 2.75rem 0 .75rem; padding-top: .75rem; border-top: 1px solid var(--line); }
        p { max-width: 42rem; margin: 0 0 1rem; }
        .introduction { font-size: 1.1rem; color: var(--soft); }
        dl { display: grid; grid-template-columns: max-content 1fr; gap: .2rem 1.2rem; margin: 0 0 1.5rem; max-width: 42rem; }
        dt { color: var(--soft); } dd { margin: 0; }
        nav ol { margin: 0; padding-left: 1.8rem; columns: 2 18rem; max-width: 42rem; }
        a { color: var(--accent); }
        .scroll { overflow-x: auto; margin: 0 0 1.25rem; }
        table { border-collapse: collapse; font-variant-numeric: tabular-nums; }
        caption { text-align: left; color: var(--soft); padding-bottom: .4rem; }
        th, td { padding: .35rem .9rem .35rem 0; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top; }
        thead th { border-bottom: 2px solid var(--soft); }
        tbody th { font-weight: 600; }
        .number { text-align: right; white-space: nowrap; }
        figure { margin: 0 0 1.5rem; }
        figcaption { color: var(--soft); font-size: .95rem; margin-top: .5rem; max-width: 42rem; }
        .drawings { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 27rem), 1fr)); gap: 1rem; align-items: start; }
        .drawings svg { background: #fff; border: 1px solid var(--line); width: 100%; height: auto; }
        figure img { max-width: 100%; max-height: 32rem; border: 1px solid var(--line); }
        .note { max-width: 42rem; margin: 0 0 1.25rem; padding: .7rem 1rem; background: var(--note); border-left: 4px solid var(--accent); }
        .caution { background: var(--caution); border-left-color: var(--caution-line); }
        .files { padding-left: 1.2rem; }
        footer { color: var(--soft); font-size: .9rem; padding-bottom: 3rem; margin-top: 3rem; }
        @media print { nav { display: none; } figure, table, .note { break-inside: avoid; } }
        """;
}
