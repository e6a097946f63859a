package sarif

// The parts of a SARIF log that are written, under the names of the standard.

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool        sarifTool            `json:"tool"`
	Invocations []sarifInvocation    `json:"invocations"`
	Bases       map[string]sarifBase `json:"originalUriBaseIds"`
	ColumnKind  string               `json:"columnKind"`
	Results     []sarifResult        `json:"results"`
}

type sarifTool struct {
	Driver sarifDriver `json:"driver"`
}

type sarifDriver struct {
	Name    string      `json:"name"`
	Version string      `json:"version,omitempty"`
	Rules   []sarifRule `json:"rules"`
}

type sarifRule struct {
	ID            string             `json:"id"`
	Short         sarifText          `json:"shortDescription"`
	Full          sarifText          `json:"fullDescription"`
	Help          sarifHelp          `json:"help"`
	Configuration sarifConfiguration `json:"defaultConfiguration"`
	Properties    map[string]string  `json:"properties"`
}

type sarifText struct {
	Text string `json:"text"`
}

type sarifHelp struct {
	Text     string `json:"text"`
	Markdown string `json:"markdown"`
}

type sarifConfiguration struct {
	Level string `json:"level"`
}

type sarifBase struct {
	Description sarifText `json:"description"`
}

type sarifInvocation struct {
	Successful bool                `json:"executionSuccessful"`
	Notes      []sarifNotification `json:"toolExecutionNotifications"`
}

type sarifNotification struct {
	Level     string          `json:"level"`
	Message   sarifText       `json:"message"`
	Rule      *sarifReference `json:"associatedRule,omitempty"`
	Locations []sarifLocation `json:"locations,omitempty"`
}

type sarifReference struct {
	ID    string `json:"id"`
	Index int    `json:"index"`
}

type sarifResult struct {
	Rule       string            `json:"ruleId"`
	Index      *int              `json:"ruleIndex,omitempty"`
	Level      string            `json:"level"`
	Message    sarifText         `json:"message"`
	Locations  []sarifLocation   `json:"locations,omitempty"`
	Related    []sarifLocation   `json:"relatedLocations,omitempty"`
	Fixes      []sarifFix        `json:"fixes,omitempty"`
	Properties map[string]string `json:"properties"`
}

type sarifLocation struct {
	ID       *int           `json:"id,omitempty"`
	Physical *sarifPhysical `json:"physicalLocation"`
	Message  *sarifText     `json:"message,omitempty"`
}

type sarifPhysical struct {
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   *sarifRegion  `json:"region,omitempty"`
}

type sarifArtifact struct {
	URI  string `json:"uri"`
	Base string `json:"uriBaseId,omitempty"`
}

type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
}

type sarifFix struct {
	Description sarifText     `json:"description"`
	Changes     []sarifChange `json:"artifactChanges"`
}

type sarifChange struct {
	Artifact     sarifArtifact      `json:"artifactLocation"`
	Replacements []sarifReplacement `json:"replacements"`
}

type sarifReplacement struct {
	Deleted  *sarifRegion `json:"deletedRegion"`
	Inserted sarifText    `json:"insertedContent"`
}
