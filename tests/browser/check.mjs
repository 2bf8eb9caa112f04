// Opens reports in a browser as people will: telephone to desktop, light and dark, on paper.
//   node check.mjs PROGRAM DESIGNS [NAME...]    PROGRAM: the built jointwright; DESIGNS: folder of designs; NAME: these designs alone
// Prints one line a page and every fault; exit status 1 when there is any.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

import { brokenPages, hostileDesign, hostileNames, manyParts } from "./designs.mjs";
import { faultsOnPaper } from "./paper.mjs";

const kWidths = [320, 375, 768, 1024, 1440]; // CSS pixels
const kPapers = { A4: { width: 595.3, height: 841.9 }, Letter: { width: 612, height: 792 } }; // points
const kLargestPage = 3e6; // bytes
// All pages share their markup; axe-core takes seconds for each, so it sees one of each verdict, both units and a hostile name.
const kForAxe = ["boot-bench", "cabinet-door-damp-coast", "wide-shelf-bookcase", "cherry-top-on-buttons", "name-script"];
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const [program, designs, ...only] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), "jointwright-browser-"));

/** What the page says of a finding. Advice on dust stands among the cautions, what holds for all dust once. */
const wordsOf = (finding) => (finding.check === "dust" ? finding.headline.slice(finding.headline.indexOf("Dust of")) : finding.headline);

/** Writes a design's page and reads its findings from the JSON report. */
function report(name, design, flags = []) {
    const page = join(folder, `${name}.html`);
    const run = (...more) => {
        const ran = spawnSync(program, ["check", design, ...more], { encoding: "utf8", maxBuffer: 1 << 28 });
        if (ran.status > 1 || ran.error) throw new Error(`${name}: ${ran.error ?? ran.stderr}`);
        return ran.stdout;
    };
    run("--format", "html", "-o", page, ...flags);
    return { name, page, findings: JSON.parse(run("--format", "json")).findings };
}

function reports() {
    const all = readdirSync(designs).filter((file) => file.endsWith(".toml")).map((file) => {
        const name = basename(file, ".toml");
        return { name, design: join(designs, file), plain: true };
    });
    const written = (name, text) => {
        const design = join(folder, `${name}.toml`);
        writeFileSync(design, text);
        return design;
    };
    for (const [name, words] of Object.entries(hostileNames))
        all.push({ name: `name-${name}`, design: written(`name-${name}`, hostileDesign(designs, words)), words });
    all.push({ name: "many-parts", design: written("many-parts", manyParts()), plain: true });
    // Every sum unfolded, on paper too.
    all.push({ name: "unfolded", design: join(designs, "boot-bench.toml"), flags: ["--working"], plain: true });
    return all.filter((one) => only.length === 0 || only.includes(one.name)).map((one) => ({ ...one, ...report(one.name, one.design, one.flags) }));
}

/** What stands out to the right at the window's width. */
async function faultsAcross(page) {
    const faults = [];
    for (const width of kWidths) {
        await page.setViewportSize({ width, height: 900 });
        const over = await page.evaluate(() => {
            const root = document.documentElement;
            if (root.scrollWidth <= root.clientWidth) return null;
            const out = [...document.body.querySelectorAll("*")].find((e) => e.getBoundingClientRect().right > root.clientWidth + 1);
            return `${root.scrollWidth} wide: ${out ? out.outerHTML.slice(0, 120) : "?"}`;
        });
        if (over) faults.push(`scrolls sideways at ${width}: ${over}`);
        // Drawings hide what lies outside them: no word may.
        const cut = await page.evaluate(() => {
            const beyond = (text) => {
                const own = text.getBoundingClientRect(), sheet = text.ownerSVGElement.getBoundingClientRect();
                return own.left < sheet.left - 1 || own.right > sheet.right + 1 || own.top < sheet.top - 1 || own.bottom > sheet.bottom + 1;
            };
            return [...document.querySelectorAll("svg text")].filter(beyond).map((text) => text.textContent.slice(0, 60));
        });
        for (const words of cut) faults.push(`a drawing cuts off "${words}" at ${width}`);
    }
    return faults;
}

/** By axe-core. The insides of drawings, which it takes long to walk through and does not judge, are taken out: nothing can be looked at after. */
async function faultsOfAccess(page) {
    const faults = [];
    await page.evaluate(axe);
    for (const [colorScheme, width] of [["light", 1280], ["dark", 375]]) {
        await page.emulateMedia({ colorScheme });
        await page.setViewportSize({ width, height: 900 });
        const violations = await page.evaluate(async () => {
            document.querySelectorAll("svg > :not(title)").forEach((inside) => inside.remove());
            const { violations } = await axe.run(document, { resultTypes: ["violations"] });
            return violations.map((v) => `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.html.slice(0, 120)).join(" | ")}`);
        });
        for (const violation of violations) faults.push(`${colorScheme}, ${width} wide: ${violation}`);
    }
    await page.emulateMedia({ colorScheme: null });
    return faults;
}

/** Landmarks, headings, links within the page; nothing of a name's made into markup. */
async function faultsOfShape(page, words) {
    return page.evaluate((words) => {
        const faults = [], count = (what) => document.querySelectorAll(what).length;
        for (const [what, wanted] of [["h1", 1], ["main", 1], ["body > div > header, body > header", 1], ["footer", 1], ["nav", 1], ["script", 0], ["img", 0], ["b", 0]])
            if (count(what) !== wanted) faults.push(`${count(what)} of "${what}", not ${wanted}`);
        let level = 0;
        for (const heading of document.querySelectorAll("h1,h2,h3,h4,h5,h6")) {
            const own = Number(heading.tagName[1]);
            if (own > level + 1) faults.push(`heading "${heading.textContent.slice(0, 40)}" skips a level`);
            level = own;
        }
        for (const link of document.querySelectorAll("a[href]")) {
            const target = link.getAttribute("href");
            if (!target.startsWith("#") || !document.getElementById(target.slice(1))) faults.push(`link to ${target}`);
        }
        for (const svg of document.querySelectorAll("svg:not(svg svg)"))
            if (!svg.querySelector("title") && !svg.ariaHidden && !svg.getAttribute("aria-label") && svg.getAttribute("aria-hidden") !== "true")
                faults.push(`drawing without a title: ${svg.outerHTML.slice(0, 80)}`);
        if (window.reached !== undefined) faults.push(`a name ran as a script: ${window.reached}`);
        const title = document.querySelector("h1").textContent;
        const plain = (text) => text.replace(/[\ufffd\u202a-\u202e]/g, ""); // marks of direction are made harmless
        if (words && !plain(title).includes(plain(words).slice(0, 12))) faults.push(`the name reads ${title.slice(0, 60)}`);
        return faults;
    }, words);
}

/** Every text of the page that is to be printed, but those within drawings. */
async function textsOnPaper(page) {
    await page.emulateMedia({ media: "print" });
    const texts = await page.evaluate(() => {
        const kinds = "h1,h2,h3,p,td,th,dt,dd,figcaption,code,.plain li,.first li,.ticks span,footer";
        const shown = (element) => element.checkVisibility() && !element.closest("thead");
        return [...document.querySelectorAll(kinds)].filter(shown).map((element) => element.textContent);
    });
    await page.emulateMedia({ media: null });
    return texts;
}

async function faultsOfPrint(page, one) {
    const faults = [];
    const texts = one.plain ? [...(await textsOnPaper(page)), ...one.findings.map(wordsOf)] : [];
    for (const [format, sheet] of Object.entries(kPapers)) {
        const pdf = join(folder, `${one.name}-${format}.pdf`);
        await page.pdf({ path: pdf, format, printBackground: false });
        for (const fault of faultsOnPaper(pdf, sheet, texts)) faults.push(`${format}: ${fault}`);
    }
    return faults;
}

async function faultsOf(browser, one) {
    const faults = [], own = pathToFileURL(one.page).href, page = await browser.newPage();
    page.on("console", (message) => {
        if (["error", "warning"].includes(message.type())) faults.push(`console: ${message.text()}`);
    });
    page.on("pageerror", (error) => faults.push(`error: ${error.message}`));
    page.on("dialog", (dialog) => {
        faults.push(`dialog: ${dialog.message()}`);
        dialog.dismiss();
    });
    await page.route("**", (route) => {
        if (route.request().url() === own) return route.continue();
        faults.push(`asks for ${route.request().url()}`);
        return route.abort();
    });
    await page.goto(own);
    if (statSync(one.page).size > kLargestPage) faults.push(`${statSync(one.page).size} bytes`);
    faults.push(...(await faultsOfPrint(page, one)));
    // All that unfolds is looked at too.
    await page.evaluate(() => document.querySelectorAll("details").forEach((details) => (details.open = true)));
    faults.push(...(await faultsOfShape(page, one.words)), ...(await faultsAcross(page)));
    if (kForAxe.includes(one.name) || only.length) faults.push(...(await faultsOfAccess(page)));
    await page.close();
    return faults;
}

const browser = await chromium.launch({
    executablePath: execFileSync("sh", ["-c", "command -v chromium"], { encoding: "utf8" }).trim(),
    chromiumSandbox: process.getuid() !== 0, // the browser's own sandbox does not run as root
    args: ["--disable-gpu", "--disable-dev-shm-usage", "--disable-background-networking"],
});
/** What is not found in a page that has it would not be found anywhere. */
async function faultsNotFound(browser) {
    const missed = [], page = join(folder, "broken.html");
    for (const { html, kinds } of brokenPages) {
        writeFileSync(page, html);
        const broken = { name: kForAxe[0], page, plain: true, findings: [{ headline: "This is not printed." }] };
        const found = await faultsOf(browser, broken);
        missed.push(...kinds.filter((kind) => !found.some((fault) => kind.test(fault))));
    }
    return missed;
}

let bad = 0, good = 0;
try {
    const missed = await faultsNotFound(browser);
    for (const kind of missed) console.log(`FAIL  a fault is not found: ${kind}`);
    bad += missed.length;
    for (const one of reports()) {
        const faults = await faultsOf(browser, one);
        console.log(`${faults.length ? "FAIL" : "pass"}  ${one.name}`);
        for (const fault of faults.slice(0, 12)) console.log(`      ${fault}`);
        if (faults.length > 12) console.log(`      and ${faults.length - 12} more`);
        faults.length ? ++bad : ++good;
    }
} finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
}
console.log(`browser checks: ${good} pages pass, ${bad} fail`);
process.exitCode = bad || !good ? 1 : 0;
