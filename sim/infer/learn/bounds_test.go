package learn

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/model"
)

func TestMoreBatchesThanCanBeLearntFromAreRefused(t *testing.T) {
	_, err := Of(context.Background(), make([]*model.Batch, MostBatches+1), Options{})
	assert.Equal(t, TooMany{201, 200}, err)
}
