package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"slices"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
)

// command is run by workspace/executeCommand.
type command func(ctx context.Context, s *session, v *desk.View, arguments []json.RawMessage) (any, error)

// The names of the commands.
const (
	commandChart     = "maltwright.chart"
	commandSheet     = "maltwright.sheet"
	commandOtherwise = "maltwright.otherwise"
)

// commands is the table of all that can be run, by their names in the protocol.
var commands = map[string]command{
	commandChart:     drawnAs(".svg", chart),
	commandSheet:     drawnAs(".pdf", paper),
	commandOtherwise: otherwise,
}

func offersCommands(c *wire.ServerCapabilities) {
	c.ExecuteCommandProvider = &wire.ExecuteCommandOptions{Commands: slices.Sorted(maps.Keys(commands))}
}

func executeCommand(ctx context.Context, s *session, v *desk.View, p wire.ExecuteCommandParams) (any, error) {
	run := commands[p.Command]
	if run == nil {
		return nil, &wire.Error{Code: wire.InvalidParams, Message: fmt.Sprintf("there is no command %q", p.Command)}
	}
	return run(ctx, s, v, p.Arguments)
}
