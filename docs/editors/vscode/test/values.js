// The plain values of an editor, as far as a client makes or reads them.
"use strict";

// value makes a class whose fields are what its constructor is given, in order.
function value(...fields) {
  return class {
    constructor(...given) {
      fields.forEach((field, i) => given[i] !== undefined && (this[field] = given[i]));
    }
  };
}

class Position {
  constructor(line, character) {
    Object.assign(this, { line, character });
  }
  isBefore(other) {
    return this.line < other.line || (this.line === other.line && this.character < other.character);
  }
  isEqual(other) {
    return this.line === other.line && this.character === other.character;
  }
}

class Range {
  constructor(...given) {
    const [a, b] = given.length === 4 ? [new Position(given[0], given[1]), new Position(given[2], given[3])] : given;
    Object.assign(this, { start: a, end: b });
  }
  contains(at) {
    return !at.isBefore(this.start) && !this.end.isBefore(at);
  }
}

class Uri {
  constructor(scheme, path, query = "") {
    Object.assign(this, { scheme, path, query, authority: "", fragment: "" });
  }
  static parse(text) {
    const [, scheme, path] = /^([a-z-]+):(?:\/\/)?([^?#]*)/.exec(text);
    return new Uri(scheme, decodeURIComponent(path));
  }
  static file(path) {
    return new Uri("file", path);
  }
  static joinPath(uri, ...parts) {
    return uri.with({ path: require("node:path").posix.join(uri.path, ...parts) });
  }
  get fsPath() {
    return this.path;
  }
  with({ scheme = this.scheme, path = this.path, query = this.query }) {
    return new Uri(scheme, path, query);
  }
  toString() {
    const slashes = this.scheme === "file" ? "//" : "";
    return `${this.scheme}:${slashes}${this.path.split("/").map(encodeURIComponent).join("/")}`;
  }
}

class MarkdownString {
  constructor(text = "") {
    this.value = text;
  }
  appendMarkdown(text) {
    this.value += text;
    return this;
  }
  appendText(text) {
    return this.appendMarkdown(text);
  }
  appendCodeblock(code, language = "") {
    return this.appendMarkdown(`\n\`\`\`${language}\n${code}\n\`\`\`\n`);
  }
}

class CodeActionKind {
  constructor(text) {
    this.value = text;
  }
  append(part) {
    return new CodeActionKind(this.value ? `${this.value}.${part}` : part);
  }
  contains(other) {
    return this.value === "" || other.value === this.value || other.value.startsWith(this.value + ".");
  }
}
for (const [name, text] of Object.entries({
  Empty: "", QuickFix: "quickfix", Refactor: "refactor", RefactorExtract: "refactor.extract", RefactorInline: "refactor.inline",
  RefactorMove: "refactor.move", RefactorRewrite: "refactor.rewrite", Source: "source", SourceOrganizeImports: "source.organizeImports",
  SourceFixAll: "source.fixAll", Notebook: "notebook",
})) CodeActionKind[name] = new CodeActionKind(text);

class WorkspaceEdit {
  constructor() {
    this.changes = new Map();
  }
  set(uri, edits) {
    this.changes.set(uri.toString(), edits);
  }
  entries() {
    return [...this.changes].map(([uri, edits]) => [Uri.parse(uri), edits]);
  }
}

class CancellationError extends Error {}

// names makes an enumeration that counts from first.
const names = (first, ...list) => Object.fromEntries(list.map((name, i) => [name, first + i]));

module.exports = {
  Position, Range, Uri, MarkdownString, CodeActionKind, WorkspaceEdit, CancellationError,
  Selection: Range,
  Location: value("uri", "range"),
  Diagnostic: value("range", "message", "severity"),
  DiagnosticRelatedInformation: value("location", "message"),
  CompletionItem: value("label", "kind"),
  CompletionList: value("items", "isIncomplete"),
  SnippetString: value("value"),
  Hover: value("contents", "range"),
  CodeLens: value("range", "command"),
  CodeAction: value("title", "kind"),
  InlayHint: value("position", "label", "kind"),
  InlayHintLabelPart: value("value"),
  TextEdit: value("range", "newText"),
  SnippetTextEdit: value("range", "snippet"),
  DocumentLink: value("range", "target"),
  DocumentHighlight: value("range", "kind"),
  DocumentSymbol: value("name", "detail", "kind", "range", "selectionRange"),
  SymbolInformation: value("name", "kind", "containerName", "location"),
  FoldingRange: value("start", "end", "kind"),
  SelectionRange: value("range", "parent"),
  SemanticTokens: value("data", "resultId"),
  SemanticTokensLegend: value("tokenTypes", "tokenModifiers"),
  CallHierarchyItem: value(), TypeHierarchyItem: value(), InlineCompletionItem: value(),
  RelativePattern: value("base", "pattern"),
  ThemeColor: value("id"),
  TabInputText: value("uri"), TabInputTextDiff: value(), TabInputNotebook: value(), TabInputCustom: value(),
  DiagnosticSeverity: names(0, "Error", "Warning", "Information", "Hint"),
  DiagnosticTag: names(1, "Unnecessary", "Deprecated"),
  CompletionItemKind: names(0, "Text", "Method", "Function", "Constructor", "Field", "Variable", "Class", "Interface", "Module", "Property", "Unit", "Value", "Enum", "Keyword", "Snippet", "Color", "File", "Reference", "Folder", "EnumMember", "Constant", "Struct", "Event", "Operator", "TypeParameter"),
  CompletionItemTag: names(1, "Deprecated"),
  CompletionTriggerKind: names(0, "Invoke", "TriggerCharacter", "TriggerForIncompleteCompletions"),
  CodeActionTriggerKind: names(1, "Invoke", "Automatic"),
  InlayHintKind: names(1, "Type", "Parameter"),
  DocumentHighlightKind: names(0, "Text", "Read", "Write"),
  FoldingRangeKind: names(1, "Comment", "Imports", "Region"),
  SymbolKind: names(0, "File", "Module", "Namespace", "Package", "Class", "Method", "Property", "Field", "Constructor", "Enum", "Interface", "Function", "Variable", "Constant", "String", "Number", "Boolean", "Array", "Object", "Key", "Null", "EnumMember", "Struct", "Event", "Operator", "TypeParameter"),
  SymbolTag: names(1, "Deprecated"),
  TextDocumentSaveReason: names(1, "Manual", "AfterDelay", "FocusOut"),
  SignatureHelpTriggerKind: names(1, "Invoke", "TriggerCharacter", "ContentChange"),
  FileType: names(0, "Unknown", "File", "Directory"),
  NotebookCellKind: names(1, "Markup", "Code"),
  LogLevel: names(0, "Off", "Trace", "Debug", "Info", "Warning", "Error"),
  ProgressLocation: { SourceControl: 1, Window: 10, Notification: 15 },
  StatusBarAlignment: { Left: 1, Right: 2 },
  ViewColumn: { Active: -1, Beside: -2, One: 1 },
};
