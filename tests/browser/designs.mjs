// Designs that a page must stand: names that try to be markup, and a piece of many parts. And a page that must not pass.
import { readFileSync } from "node:fs";

const quoted = (text) => JSON.stringify(text); // a TOML basic string takes the same escapes

/** Names that end up in every corner of the page. */
export const hostileNames = {
    script: '<script>window.reached = 1</script><img src=x onerror="window.reached = 2">',
    quotes: `"'\`</style></svg><b onclick='window.reached = 3'>&lt;&amp;`,
    "right-to-left": "\u05db\u05d9\u05e1\u05d0 \u202eslat\u202c \u0645\u0642\u0639\u062f",
    emoji: "\u{1FA91} \u{1F468}\u200d\u{1F527} e\u0301\u0301\u0301",
    long: "bench".repeat(2000),
    "long-without-end": "\u2014x\u00ad".repeat(1200),
};

/** A design with a name in place of the piece's and of one part's; the ids of parts hold no # and no /. */
export function hostileDesign(designs, name) {
    const text = readFileSync(`${designs}/boot-bench.toml`, "utf8");
    return text.replace(/^name\s*=.*$/m, () => `name = ${quoted(name)}`).replaceAll('"long rail"', () => quoted(name.replace(/[#/]/g, "") + " r"));
}

/** A field of slats on rails and legs: some four hundred parts, carrying nothing. */
export function manyParts() {
    const slats = 360;
    return `[piece]
name = "slatted field"
units = "mm"
use = "none"
[room]
air = "heated, cold winters"
moisture_at_glue_up = 8
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "leg"
wood = "oak"
length = 400
width = 60
thickness = 60
grain = "z"
face = "y"
at = [0, 0, 0]
repeat = { count = ${slats / 12 + 1}, along = "x", gap = 440 }
copies = [{ at = [0, 300, 0] }]
[[part]]
id = "rail"
wood = "oak"
length = ${48 * slats}
width = 80
thickness = 40
grain = "x"
face = "y"
at = [0, 10, 400]
copies = [{ at = [0, 310, 400] }]
[[part]]
id = "slat"
wood = "oak"
length = 400
width = 40
thickness = 20
grain = "y"
face = "z"
at = [0, -20, 472]
repeat = { count = ${slats}, along = "x", gap = 8 }
[[joint]]
between = ["slat", "rail"]
kind = "housing"
glue = "PVA"
clearance = 0.4
[[joint]]
between = ["rail", "leg"]
kind = "face"
glue = "PVA"
`;
}

const page = (body) => `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Broken</title></head><body>${body}</body></html>`;

/** Pages that have every fault there is, and what tells of each. */
export const brokenPages = [
    {
        html: page(`<main><h1>Broken</h1><h3>Skips</h3><p style="color:#aaa;background:#fff">Pale words</p>
<style>@media screen { div { width: 2000px } }</style><div>wide on the screen</div>
<p style="position:absolute;left:-50px;top:400px">outside</p><a href="#nowhere">leads nowhere</a>
<svg width="90" height="20"><text x="60" y="15">cut off by the drawing</text></svg><img src="http://reports.invalid/spy.png"></main>
<script>console.error("trouble");setTimeout(() => { throw new Error("thrown"); })</script>`),
        kinds: [/^console: trouble/, /^error: thrown/, /^asks for http:\/\/reports\.invalid/, /scrolls sideways at 320/,
            /scrolls sideways at 1440/, /^light.*color-contrast/, /^dark.*color-contrast/, /image-alt/, /skips a level/,
            /^link to #nowhere/, /^drawing without a title/, /a drawing cuts off "cut off by/, /^A4: page 1: ".*" is cut off/,
            /^Letter: page 1: ".*" is cut off/, /^A4: not printed: outside/, /^A4: not printed: This/],
    },
    { html: page(`<main><h1>Wide on paper</h1><p style="width:1500px">${"one two three ".repeat(60)}</p></main>`), kinds: [/^A4: printed small/] },
];
