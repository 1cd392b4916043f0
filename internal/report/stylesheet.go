package report

// StyleSheet is the style of the report, for other pages of the program that look alike.
func StyleSheet() string { return asset("style.css") }
