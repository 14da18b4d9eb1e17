// Runs the reckoner module under Node: reads [{method, payload}, …] from the file
// named third, asks each in turn, and writes the answers to the fourth, a JSON text a line.
// usage: node ask.mjs wasm_exec.js reckoner.wasm calls.json answers.txt
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [exec, module, calls, out] = process.argv.slice(2);
await import(pathToFileURL(exec).href);
const go = new globalThis.Go();
const ready = new Promise((resolve) => (globalThis.thawbookReady = resolve));
const { instance } = await WebAssembly.instantiate(readFileSync(module), go.importObject);
go.run(instance);
await ready;
const answers = [];
for (const { method, payload } of JSON.parse(readFileSync(calls, "utf8"))) {
  const started = performance.now();
  let answer;
  try {
    answer = globalThis.thawbook.call(method, JSON.stringify(payload));
  } catch (error) {
    answer = { json: JSON.stringify({ died: String(error) }) };
  }
  const sum = answer.bytes ? new Float64Array(answer.bytes.buffer).reduce((a, x) => a + x, 0) : null;
  answers.push(JSON.stringify({ json: JSON.parse(answer.json), sum, ms: performance.now() - started }));
}
writeFileSync(out, answers.join("\n") + "\n");
process.exit(0);
