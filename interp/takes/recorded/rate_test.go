package recorded

import (
	"strings"
	"testing"
)

// A recording says its rate in many ways, or does not.
func TestRateIn(t *testing.T) {
	table := func(s string) string { return strings.ReplaceAll(s, "|", "\t") }
	for _, c := range []struct{ name, head, want string }{
		{"none", "timecode,focus_m\n14:20:10:00,1.7\n", ""},
		{"above", "Clip: A003\nFrame Rate: 23.98 fps\ntimecode,focus_m\n14:20:10:00,1.7\n", "23.976"},
		{"above, in cells", "\"Project FPS\";\"25,000\"\ntimecode;focus_m\n14:20:10:00;1,7\n", "25"},
		{"drop-frame by its timecode", "# timebase = 29.97\ntimecode,focus_m\n14:20:10;00,1.7\n", "29.97df"},
		{"drop-frame by its name", "FPS\t59.94 DF\ntimecode\tfocus_m\n14:20:10:00\t1.7\n", "59.94df"},
		{"a column", table("Timecode|Project FPS|Focus Distance\n|fps|m\n14:20:10:00|24|1.7\n"), "24"},
		{"of the sensor", table("Timecode|Sensor FPS|Focus Distance\n14:20:10:00|48|1.7\n"), ""},
		{"no rate of timecode", "Frame Rate: 96\ntimecode,focus_m\n14:20:10:00,1.7\n", ""},
		{"of something else", "Data rate: 24\nFrame rate: 24 of 25\ntimecode,focus_m\n14:20:10:00,1.7\n", ""},
		{"a sample", `{"timing":{"timecode":{"hours":1,"minutes":0,"seconds":0,"frames":0,"frameRate":{"num":24000,"denom":1001},"dropFrame":false}}}`, "23.976"},
		{"nothing", "", ""},
		{"two bytes a letter", "\xff\xfe" + strings.Join(strings.Split("fps: 25\ntimecode,focus_m\n", ""), "\x00") + "\x00", "25"},
	} {
		rate, ok := RateIn([]byte(c.head), "clip.csv")
		if got := rate.String(); ok != (c.want != "") || ok && got != c.want {
			t.Errorf("%s: %s, %v", c.name, got, ok)
		}
	}
}
