package follow

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"fmt"
	"math"

	"maltwright/sim/infer/evidence"
)

// packing names the form in which settled members are kept; another form has another name.
const packing = "maltwright settled 1\n"

// shelfKey is under which settled members are kept: by all that they follow from, but for the
// program itself, which whoever keeps them must tell apart.
func shelfKey(t *evidence.Trial, o Options) string {
	print := t.Print()
	sum := sha256.Sum256(fmt.Appendf(nil, "%s%x %d %x %x", packing, print, o.Members, seed1, seed2))
	return hex.EncodeToString(sum[:])
}

// vain is what is kept in the place of settled members that were sought in vain.
func vain(key string) []byte { return []byte(packing + "none of " + key) }

// pack writes settled members as bytes: the packing, how many there are and of how many
// axes, their numbers, and the SHA-256 of all that.
func (s *settled) pack() []byte {
	var b bytes.Buffer
	b.WriteString(packing)
	for _, n := range []int{len(s.draws), len(s.draws[0]), s.members, s.rounds, s.size} {
		_ = binary.Write(&b, binary.LittleEndian, uint32(n))
	}
	for _, list := range append(s.draws[:len(s.draws):len(s.draws)], s.counts, s.logs) {
		_ = binary.Write(&b, binary.LittleEndian, list)
	}
	sum := sha256.Sum256(b.Bytes())
	return append(b.Bytes(), sum[:]...)
}

// unpack reads what pack wrote, of so many axes and for so many members; nil where it is
// anything else.
func unpack(data []byte, axes, members int) *settled {
	s := unpacked(data, axes)
	if s == nil || len(s.draws) > members {
		return nil
	}
	sum := 0.0
	for _, c := range s.counts {
		sum += c
	}
	if sum != float64(members) {
		return nil
	}
	return s
}

// unpacked reads what pack wrote of so many axes, nil where it is anything else.
func unpacked(data []byte, axes int) *settled {
	const numbers, numberSize, floatSize = 5, 4, 8
	body := len(data) - sha256.Size
	if body < len(packing)+numbers*numberSize || string(data[:len(packing)]) != packing || sha256.Sum256(data[:body]) != [sha256.Size]byte(data[body:]) {
		return nil
	}
	head, rest := data[len(packing):], data[len(packing)+numbers*numberSize:body]
	number := func(i int) int { return int(binary.LittleEndian.Uint32(head[i*numberSize:])) }
	n := number(0)
	if n < 1 || number(1) != axes || len(rest) != floatSize*n*(axes+2) {
		return nil
	}
	s := &settled{members: number(2), rounds: number(3), size: number(4)}
	take := func(count int) []float64 {
		list := make([]float64, count)
		for i := range list {
			list[i] = math.Float64frombits(binary.LittleEndian.Uint64(rest[i*floatSize:]))
		}
		rest = rest[count*floatSize:]
		return list
	}
	for range n {
		s.draws = append(s.draws, take(axes))
	}
	s.counts, s.logs = take(n), take(n)
	return s
}
