package study

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"tuckline/internal/result"
)

// leastReplications is how many an interval needs.
const leastReplications = 2

// estimateOf is the mean with its t interval. Below two values there is no
// interval: low and high are the mean, and N tells.
func estimateOf(values []float64, confidence float64) result.Estimate {
	n := len(values)
	if n == 0 {
		return result.Estimate{}
	}
	if n < leastReplications {
		return result.Estimate{Mean: values[0], Low: values[0], High: values[0], N: n}
	}
	mean, sd := stat.MeanStdDev(values, nil)
	t := distuv.StudentsT{Sigma: 1, Nu: float64(n - 1)}.Quantile((1 + confidence) / 2)
	half := t * sd / math.Sqrt(float64(n))
	return result.Estimate{Mean: mean, Low: mean - half, High: mean + half, SD: sd, N: n}
}
