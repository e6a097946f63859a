// Package arrows holds the import graph of the module: tests only. The folders are a
// pipeline, and an import points only back along it.
package arrows
