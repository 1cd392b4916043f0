package scenario_test
import ("testing";"tuckline/internal/scenario")
func TestX(t *testing.T){ s,err:=scenario.Schema(); t.Log(string(s),err)}
