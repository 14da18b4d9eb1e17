// Reads a workbook with a library that is not ours and writes it as that library
// does: texts inside their cells, names and hidden rows as it keeps them.
// usage: node rewrite.mjs LIBRARY IN OUT
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [library, from, to] = process.argv.slice(2);
const xlsx = await import(pathToFileURL(library).href);
const book = xlsx.read(readFileSync(from), { cellFormula: true, cellNF: true });
writeFileSync(to, xlsx.write(book, { type: "buffer", bookType: "xlsx" }));
