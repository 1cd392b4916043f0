package scenario

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"tuckline/sim"
)

const (
	dayLength  = 24 * sim.Hour
	weekLength = 7 * dayLength
)

// weekdays are the words for days, from Monday.
var weekdays = []string{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"}

// longDays are other words for them.
var longDays = []string{"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"}

// Clock is an engine time as weekday and time of the day, to the nearest minute: "Thu 06:00", in a later calendar
// week than that of the start with its number: "week 2 Mon 06:00". It is empty without a calendar.
func (c *Calendar) Clock(t sim.Micros) string {
	if c == nil {
		return ""
	}
	at := c.start + t + sim.Minute/2
	text := weekClock{week: 1, time: at % weekLength}.words()
	if week := at/weekLength + 1; week > 1 {
		return fmt.Sprintf("week %d %s", week, text)
	}
	return text
}

// At is the engine time of a clock: of "Fri 14:00" the first at the start or later; "week 2 Fri 14:00" counts
// calendar weeks, that of the start is the first. An error says how a clock is written, or that the
// time lies before the start.
func (c *Calendar) At(text string) (sim.Micros, error) {
	clock, err := parseWeekClock(text)
	if err != nil {
		return 0, err
	}
	return c.at(clock)
}

// at is the engine time of a clock that has been read.
func (c *Calendar) at(clock weekClock) (sim.Micros, error) {
	if c == nil {
		return 0, fmt.Errorf("a clock such as %s needs a calendar; without one there are no days", clock.words())
	}
	if clock.week == 0 {
		return (clock.time - c.start + weekLength) % weekLength, nil
	}
	t := sim.Micros(clock.week-1)*weekLength + clock.time - c.start
	if t < 0 {
		return 0, fmt.Errorf("week 1 %s lies before the start, %s; that week begins with the start", clock.words(), c.Clock(0))
	}
	return t, nil
}

// weekClock is a time of a week.
type weekClock struct {
	at
	// week counts from 1; 0 is not written.
	week int
	// time is from Monday 00:00, less than a week.
	time sim.Micros
}

// words is the day and the time, without the week.
func (w weekClock) words() string {
	return weekdays[w.time/dayLength%7] + " " + clockWords(w.time%dayLength)
}

// clockWords is a time of the day: "06:00".
func clockWords(t sim.Micros) string {
	return fmt.Sprintf("%02d:%02d", t/sim.Hour, t%sim.Hour/sim.Minute)
}

// daysText writes rising days in the shortest way: "Mon-Wed, Fri".
func daysText(days []int) string {
	var parts []string
	for i := 0; i < len(days); {
		last := i
		for last+1 < len(days) && days[last+1] == days[last]+1 {
			last++
		}
		switch last - i {
		case 0:
			parts = append(parts, weekdays[days[i]])
		case 1:
			parts = append(parts, weekdays[days[i]], weekdays[days[last]])
		default:
			parts = append(parts, weekdays[days[i]]+"-"+weekdays[days[last]])
		}
		i = last + 1
	}
	return strings.Join(parts, ", ")
}

var (
	dayTime   = regexp.MustCompile(`^(\d{1,2}):(\d{2})$`)
	weekTime  = regexp.MustCompile(`^(?:week ([1-9]\d{0,3}) )?(\pL+) (\S+)$`)
	otherTime = regexp.MustCompile(`(?i)^(\d{1,2})(?:[.h]?(\d{2}))? ?(?:h|am|pm|uhr|o'clock)?$`)
)

// parseClock reads a time of the day, 00:00 to 24:00.
func parseClock(text string) (sim.Micros, error) {
	found := dayTime.FindStringSubmatch(strings.TrimSpace(text))
	if found == nil {
		if otherTime.MatchString(strings.TrimSpace(text)) {
			return 0, fmt.Errorf("%q is not a time of the day as it is written here: 06:00 or 18:30, hours from 00 to 24", text)
		}
		return 0, fmt.Errorf("%q is not a time of the day; write it as \"06:00\"", text)
	}
	hours, _ := strconv.Atoi(found[1])
	minutes, _ := strconv.Atoi(found[2])
	if minutes > 59 || hours > 24 || (hours == 24 && minutes > 0) {
		return 0, fmt.Errorf("%q does not exist; a day goes from 00:00 to 24:00", text)
	}
	return sim.Micros(hours)*sim.Hour + sim.Micros(minutes)*sim.Minute, nil
}

// parseDay reads a weekday.
func parseDay(text string) (int, error) {
	for day, word := range weekdays {
		switch {
		case text == word:
			return day, nil
		case strings.EqualFold(text, word) || strings.EqualFold(text, longDays[day]):
			return 0, fmt.Errorf("%q is written %s here", text, word)
		}
	}
	if strings.Contains(text, ",") {
		return 0, fmt.Errorf("%q: several days are a list, such as [Mon, Wed]", text)
	}
	return 0, fmt.Errorf("%q is not a day; the days are %s", text, strings.Join(weekdays, ", "))
}

// parseWeekClock reads "Fri 14:00" or "week 2 Fri 14:00".
func parseWeekClock(text string) (w weekClock, err error) {
	found := weekTime.FindStringSubmatch(strings.Join(strings.Fields(text), " "))
	if found == nil {
		return w, fmt.Errorf("%q is not a day and a time; write it as \"Fri 14:00\"", text)
	}
	day, err := parseDay(found[2])
	if err != nil {
		return w, err
	}
	time, err := parseClock(found[3])
	if err != nil {
		return w, err
	}
	w.week, _ = strconv.Atoi(found[1])
	w.time = sim.Micros(day)*dayLength + time
	if w.time == weekLength { // Sun 24:00 is Mon 00:00 of the next week
		w.time = 0
		if w.week > 0 {
			w.week++
		}
	}
	return w, nil
}
