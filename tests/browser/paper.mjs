// What stands on the printed pages, by pdftotext of poppler-utils.
import { execFileSync } from "node:child_process";

const kLeastHeight = 9.5; // points from top to foot of a word's box: letters of about 8 points

const unescaped = (text) =>
    text.replace(/&lt;/g, "<").replace(/&gt;/g, ">").replace(/&quot;/g, '"').replace(/&apos;|&#39;/g, "'").replace(/&amp;/g, "&");

/** Pages with their size and words, each word with its box in points. */
export function pagesOf(pdf) {
    const text = execFileSync("pdftotext", ["-bbox", pdf, "-"], { encoding: "utf8", maxBuffer: 1 << 28 });
    const pages = [];
    for (const line of text.split("\n")) {
        const page = /<page width="([\d.]+)" height="([\d.]+)"/.exec(line);
        if (page) pages.push({ width: +page[1], height: +page[2], words: [] });
        const word = /<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">(.*)<\/word>/.exec(line);
        if (word)
            pages.at(-1).words.push({ left: +word[1], top: +word[2], right: +word[3], bottom: +word[4], text: unescaped(word[5]) });
    }
    return pages;
}

/** Letters alone: what is left of a text when case, line ends, blanks, ligatures and marks of direction do not count. */
export const letters = (text) => text.toUpperCase().normalize("NFKC").replace(/[\s\u00ad\u200b-\u200f\u202a-\u202e\u2066-\u2069]+/g, "");

/** Everything that is wrong with a printed report, one sentence each. */
export function faultsOnPaper(pdf, sheet, texts) {
    const pages = pagesOf(pdf), faults = [];
    if (pages.length === 0) return ["nothing is printed"];
    for (const [index, page] of pages.entries()) {
        if (Math.abs(page.width - sheet.width) > 1.5 || Math.abs(page.height - sheet.height) > 1.5)
            faults.push(`page ${index + 1} is ${page.width} by ${page.height} points`);
        for (const word of page.words)
            if (word.left < 0 || word.top < 0 || word.right > page.width || word.bottom > page.height)
                faults.push(`page ${index + 1}: "${word.text}" is cut off at ${word.left}, ${word.top} to ${word.right}, ${word.bottom}`);
        if (page.words.length === 0) faults.push(`page ${index + 1} is empty`);
    }
    // A browser shrinks a page that is too wide for the paper until it fits: read it by the height of its words.
    const heights = pages.flatMap((page) => page.words.map((word) => word.bottom - word.top)).sort((a, b) => a - b);
    const middle = heights[heights.length >> 1];
    if (!(middle >= kLeastHeight)) faults.push(`printed small: words are ${middle} points high`);
    const printed = letters(execFileSync("pdftotext", ["-raw", pdf, "-"], { encoding: "utf8", maxBuffer: 1 << 28 }));
    for (const text of texts) if (!printed.includes(letters(text))) faults.push(`not printed: ${text.trim().slice(0, 200)}`);
    return faults;
}
