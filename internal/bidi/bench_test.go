package bidi

import (
	"strings"
	"testing"
)

// Each benchmark resolves one paragraph and orders it as lines of 80
// characters.
func benchmarkParagraph(b *testing.B, sentence string, base Direction) {
	text := []rune(strings.Repeat(sentence, 1+800/len([]rune(sentence))))
	b.ReportAllocs()
	for b.Loop() {
		p := Resolve(text, base)
		for start := 0; start < len(text); start += 80 {
			Reorder(p.Line(start, min(start+80, len(text))))
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(text)), "ns/char")
}

const (
	latin  = "Hold the baby upright on the chest, skin to skin, and check that the nose is free (look every 15 minutes). "
	hindi  = "शिशु को छाती पर सीधा रखें और देखें कि नाक खुली है (हर 15 मिनट में)। "
	arabic = "ضعي الطفل على الصدر في وضع قائم، وتأكدي أن أنفه مكشوف (كل 15 دقيقة، KMC 24 ساعة). "
)

func BenchmarkLatin(b *testing.B)            { benchmarkParagraph(b, latin, LeftToRight) }
func BenchmarkLatinAuto(b *testing.B)        { benchmarkParagraph(b, latin, Auto) }
func BenchmarkLatinRightToLeft(b *testing.B) { benchmarkParagraph(b, latin, RightToLeft) }
func BenchmarkDevanagari(b *testing.B)       { benchmarkParagraph(b, hindi, LeftToRight) }
func BenchmarkArabic(b *testing.B)           { benchmarkParagraph(b, arabic, RightToLeft) }
