package dropline.harness.timeline;

/** How the drawing looks: the report's colours, by day and by night, and patterns for what was lost. */
final class Style {
    static final String SHEET = """
            <style>
            svg {
              --paper: #f5f1e7; --card: #fdfbf5; --ink: #1d2b2d; --soft: #55646a; --line: #d6cfbf; --teal: #0e565c;
              --teal-soft: #cfe0dd; --ochre: #a86a10; --ochre-soft: #f0dfb8; --brick: #963a22; --violet-soft: #e4d6e6;
              --violet: #6d4a73;
            }
            @media (prefers-color-scheme: dark) {
              svg {
                --paper: #11191a; --card: #182324; --ink: #e6e2d6; --soft: #9fb0b0; --line: #33423f; --teal: #6fc2bf;
                --teal-soft: #1f4446; --ochre: #e0ac54; --ochre-soft: #4a3a1a; --brick: #ec8f72; --violet-soft: #43304a;
                --violet: #c9a5d0;
              }
            }
            text { font: 10px system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", sans-serif;
                fill: var(--soft); }
            .paper { fill: var(--paper); } .card { fill: var(--card); stroke: var(--line); }
            .h { font: 17px Georgia, "Palatino Linotype", "Noto Serif", serif; fill: var(--ink); }
            .note { font-size: 12px; } .ink { fill: var(--ink); } .bold { fill: var(--ink); font-weight: 700; }
            .name { font-size: 12px; fill: var(--ink); } .cell { font-size: 11px; fill: var(--ink); }
            .head { font-size: 11px; font-weight: 600; }
            .hex { font: 9px ui-monospace, Consolas, "DejaVu Sans Mono", monospace; fill: var(--ink); }
            .lane { stroke: var(--line); }
            .axis { stroke: var(--soft); }
            .edge { stroke: var(--soft); stroke-dasharray: 2 2; }
            .request { fill: var(--teal-soft); stroke: var(--teal); stroke-width: 1.4; }
            .reply { fill: var(--ochre-soft); stroke: var(--ochre); stroke-width: 1.4; }
            .broadcast { fill: var(--violet-soft); stroke: var(--violet); stroke-width: 1.4; }
            .double { fill: none; stroke: var(--violet); }
            .other { fill: none; stroke: var(--brick); stroke-width: 1.4; stroke-dasharray: 4 2; }
            .split { stroke: var(--line); stroke-width: .8; }
            .driver { fill: var(--ink); } .break { fill: none; stroke: var(--paper); stroke-width: 2.5; }
            .fold { fill: none; stroke: var(--soft); stroke-width: 1.2; }
            .clash { fill: url(#crossed); stroke: var(--brick); }
            .cut { fill: url(#slanted); stroke: var(--brick); stroke-dasharray: 3 2; }
            .band { fill: none; stroke: var(--brick); stroke-dasharray: 1 2; }
            .mark { fill: none; stroke: var(--brick); stroke-width: 2.2; }
            .sign { fill: var(--card); stroke: var(--brick); stroke-width: 1.4; }
            .lost { fill: var(--brick); font-weight: 700; } .hatch { stroke: var(--brick); stroke-width: 1.1; }
            </style>
            <defs>
            <pattern id="crossed" width="6" height="6" patternUnits="userSpaceOnUse">
            <path class="hatch" d="M0 0L6 6M6 0L0 6"/></pattern>
            <pattern id="slanted" width="6" height="6" patternUnits="userSpaceOnUse">
            <path class="hatch" d="M-1 7L7 -1M-1 1L1 -1M5 7L7 5"/></pattern>
            </defs>
            """;

    private Style() {}
}
