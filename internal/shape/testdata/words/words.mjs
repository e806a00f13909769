// Writes the word lists of this folder, one a language: every word with a letter,
// in the script of that language, of CLDR's names of languages, territories, scripts, currencies,
// months, days and units. CLDR is asked through the Intl of Node.js.
//
//     node words.mjs
import { writeFileSync } from "node:fs";

const scripts = {
  am: "Ethiopic", ar: "Arabic", bn: "Bengali", en: "Latin", es: "Latin", fa: "Arabic", fr: "Latin",
  hi: "Devanagari", km: "Khmer", my: "Myanmar", ne: "Devanagari", ps: "Arabic", pt: "Latin",
  sw: "Latin", ta: "Tamil", te: "Telugu", th: "Thai", ur: "Arabic",
};

const letters = [..."abcdefghijklmnopqrstuvwxyz"];
const longer = codes => codes.flatMap(c => letters.map(l => c + l));
const two = longer(letters), three = longer(two), four = longer(three);
const upper = c => c.toUpperCase(), title = c => c[0].toUpperCase() + c.slice(1);
const codes = {
  language: [...two, ...three], region: two.map(upper), script: four.map(title), currency: three.map(upper),
};

// Every date of the year has a month and a day of the week.
const days = Array.from({ length: 366 }, (_, i) => Date.UTC(2024, 0, 1 + i));

function* names(tag) {
  for (const [type, list] of Object.entries(codes)) {
    const of = new Intl.DisplayNames(tag, { type, fallback: "none" });
    for (const code of list) {
      try {
        yield of.of(code) ?? "";
      } catch {} // not the form of a code
    }
  }
  for (const width of ["long", "short"]) {
    const date = new Intl.DateTimeFormat(tag, { month: width, weekday: width, timeZone: "UTC" });
    for (const d of days) yield date.format(d);
    for (const unit of Intl.supportedValuesOf("unit")) {
      const measure = new Intl.NumberFormat(tag, { style: "unit", unit, unitDisplay: width });
      for (const n of [0, 1, 2, 3, 11, 100]) yield measure.format(n);
    }
  }
}

for (const [tag, script] of Object.entries(scripts)) {
  const word = new RegExp(`(?:(?!\\p{P})[\\p{Script_Extensions=${script}}\\p{M}\\u200c\\u200d]|['’])+`, "gu");
  const letter = new RegExp(`(?=\\p{L})\\p{Script=${script}}`, "u");
  const words = new Set();
  for (const name of names(tag)) {
    for (const w of name.normalize("NFC").match(word) ?? []) if (letter.test(w)) words.add(w);
  }
  const sorted = [...words].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  writeFileSync(`${tag}.txt`, sorted.join("\n") + "\n");
  console.log(tag, sorted.length);
}
