// Colours texts by a TextMate grammar, as an editor does: node scopes.js GRAMMAR < texts.json.
// In goes a list of texts, out comes for each a list of [start, end, scopes], the places in
// units of UTF-16 from the start of the text.
"use strict";
const fs = require("fs");
const path = require("path");
const textmate = require("vscode-textmate");
const oniguruma = require("vscode-oniguruma");

async function main() {
  const wasm = path.join(path.dirname(require.resolve("vscode-oniguruma")), "onig.wasm");
  await oniguruma.loadWASM(fs.readFileSync(wasm).buffer);
  const file = process.argv[2];
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(fs.readFileSync(file, "utf8"), file),
  });
  const grammar = await registry.loadGrammar("source.malt");
  const texts = JSON.parse(fs.readFileSync(0, "utf8"));
  const all = texts.map((text) => {
    const list = [];
    let state = textmate.INITIAL;
    let at = 0;
    for (const line of text.split("\n")) {
      const result = grammar.tokenizeLine(line, state);
      if (result.stoppedEarly) throw new Error("a line took too long: " + line);
      for (const t of result.tokens) {
        const end = Math.min(t.endIndex, line.length);
        if (end > t.startIndex) list.push([at + t.startIndex, at + end, t.scopes.slice(1)]);
      }
      state = result.ruleStack;
      at += line.length + 1;
    }
    return list;
  });
  process.stdout.write(JSON.stringify(all));
}

main().catch((e) => {
  console.error(e);
  process.exit(1);
});
