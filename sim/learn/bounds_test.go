package learn

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/process"
)

func TestMoreBatchesThanCanBeLearntFromAreRefused(t *testing.T) {
	_, err := Of(context.Background(), make([]*process.Batch, MostBatches+1), Options{})
	assert.EqualError(t, err, "51 batches, and 50 are the most to learn from at a time; leave the oldest out")
}
