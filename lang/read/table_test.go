package read

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/vocabulary"
)

// built lists the words that the table of each block builds.
var built = map[vocabulary.Block][]string{
	vocabulary.File:      wordsOf(fileStatements),
	vocabulary.Grain:     wordsOf(grainFacts),
	vocabulary.Site:      wordsOf(siteFacts),
	vocabulary.Vessel:    wordsOf(vesselFacts),
	vocabulary.Floor:     wordsOf(floorFacts),
	vocabulary.KilnFacts: wordsOf(kilnFacts),
	vocabulary.Scale:     wordsOf(scaleFacts),
	vocabulary.House:     wordsOf(learntFacts),
	vocabulary.Process:   wordsOf(processStatements),
	vocabulary.Steep:     wordsOf(steepStatements),
	vocabulary.Repeat:    wordsOf(repeatStatements),
	vocabulary.Germinate: wordsOf(germinateStatements),
	vocabulary.Wither:    wordsOf(witherStatements),
	vocabulary.Kiln:      wordsOf(kilnStatements),
	vocabulary.Batch:     wordsOf(batchStatements),
}

// readByOthers are the statements that no table builds, each with what reads it instead.
var readByOthers = map[vocabulary.Key]string{
	{In: vocabulary.File, Word: "use"}: "the loader brings the file in before anything is built",
}

// wordsOf lists the words of a table that do something.
func wordsOf[F any](set map[string]F) (words []string) {
	for word, do := range set {
		if !reflect.ValueOf(do).IsNil() {
			words = append(words, word)
		}
	}
	return words
}

// slips says of each row that no table builds and of each builder that has no row what
// is missing where.
func slips(rows []vocabulary.Row, built map[vocabulary.Block][]string) (list []string) {
	has := map[vocabulary.Key]bool{}
	for _, row := range rows {
		for _, in := range row.In {
			key := vocabulary.Key{In: in, Word: row.Word}
			has[key] = true
			if everywhere[row.Word] == nil && readByOthers[key] == "" && !slices.Contains(built[in], row.Word) {
				list = append(list, fmt.Sprintf("the vocabulary has %q in the block %q, and no table builds it", row.Word, in))
			}
		}
	}
	for in, words := range built {
		for _, word := range words {
			if !has[vocabulary.Key{In: in, Word: word}] {
				list = append(list, fmt.Sprintf("the table of the block %q builds %q, which the vocabulary has not there", in, word))
			}
		}
	}
	slices.Sort(list)
	return list
}

func TestEachStatementOfTheVocabularyIsBuilt(t *testing.T) {
	require.Empty(t, slips(vocabulary.Rows(), built))
	for word := range everywhere {
		require.NotEmpty(t, vocabulary.Homes(word), "%s is taken in every block, and the vocabulary has it in none", word)
	}
}

func TestAStatementWithoutABuilderIsTold(t *testing.T) {
	rows := append(vocabulary.Rows(), vocabulary.Row{Word: "skim", In: []vocabulary.Block{vocabulary.Steep}})
	require.Equal(t, []string{`the vocabulary has "skim" in the block "steep", and no table builds it`}, slips(rows, built))

	more := maps.Clone(built)
	more[vocabulary.Floor] = append(slices.Clone(more[vocabulary.Floor]), "swept")
	require.Equal(t, []string{`the table of the block "floor" builds "swept", which the vocabulary has not there`}, slips(vocabulary.Rows(), more))
}
