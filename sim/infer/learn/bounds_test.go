package learn

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/model"
)

func TestMoreBatchesThanCanBeLearntFromAreRefused(t *testing.T) {
	_, err := Of(context.Background(), make([]*model.Batch, MostBatches+1), Options{})
	assert.EqualError(t, err, "51 batches, and 50 are the most to learn from at a time; leave the oldest out")
}
