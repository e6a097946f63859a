// Package outline says what stands where in a file of the language: what it defines and the
// steps of it (Symbols), what can be folded (Folds), the files it names (Links), every place where
// something is named (Names), and what each of its words is (Kinds). Over the files of a folder it
// finds all places that mean the same thing (Folder.Same) and gives it another name (Folder.Rename).
//
// All of it works on the tree of a text of which some does not read: what stands goes on being
// seen. Places are offsets, as everywhere in the language.
//
// # How it works
//
// What a word does comes from the vocabulary alone: a row that takes a name, or whose block has one,
// is seen without a word about it here. One name means one thing within a house, which is a file
// with all that it uses; what a name means in one house it means in every other one that shares one of its
// places, and so on. That is how the files of a folder that use one house hang together.
package outline
