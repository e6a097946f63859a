// A document that is open in the stand-in of an editor.
"use strict";

const { Position, Range } = require("./values");

class Document {
  constructor(uri, languageId, text) {
    Object.assign(this, { uri, languageId, text, version: 1, isClosed: false, isDirty: false, isUntitled: uri.scheme === "untitled", eol: 1, encoding: "utf8" });
  }
  get fileName() {
    return this.uri.path;
  }
  get lineCount() {
    return this.text.split("\n").length;
  }
  getText(range) {
    return range ? this.text.slice(this.offsetAt(range.start), this.offsetAt(range.end)) : this.text;
  }
  offsetAt({ line, character }) {
    const lines = this.text.split("\n");
    return lines.slice(0, line).reduce((sum, l) => sum + l.length + 1, 0) + character;
  }
  positionAt(offset) {
    const before = this.text.slice(0, offset).split("\n");
    return new Position(before.length - 1, before.at(-1).length);
  }
  // find gives the position of a text, or behind it.
  find(text, behind = false) {
    const at = this.text.indexOf(text);
    if (at < 0) throw new Error(`${this.fileName} has no ${text}`);
    return this.positionAt(at + (behind ? text.length : 0));
  }
  // replace puts one text in the place of another, and gives the change as an editor tells of it.
  replace(old, text) {
    const rangeOffset = this.text.indexOf(old);
    if (rangeOffset < 0) throw new Error(`${this.fileName} has no ${old}`);
    const range = new Range(this.positionAt(rangeOffset), this.positionAt(rangeOffset + old.length));
    this.text = this.text.slice(0, rangeOffset) + text + this.text.slice(rangeOffset + old.length);
    this.version++;
    this.isDirty = true;
    return { range, rangeOffset, rangeLength: old.length, text };
  }
}

module.exports = { Document };
