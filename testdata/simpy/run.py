"""Usage: run.py reference|lowmere REPLICATIONS [SEED]
or:    run.py reference|lowmere fixed < CASES
or:    run.py described fixed < CASES

One JSON object a line for every replication: the good pieces, the microseconds of the window in each state, and
the stops of each station. With fixed, every line of CASES is a replication without chance: an object with the age and
the length of each cause of each station; with described, of a whole serial line. Needs python3-simpy3 of Debian."""

import json
import sys

from lines import replicate

if __name__ == "__main__":
    line, times = sys.argv[1:3]
    seed = sys.argv[3] if len(sys.argv) > 3 else "1"
    if times == "fixed":
        for case in sys.stdin:
            print(json.dumps(replicate(line, seed, 0, json.loads(case))), flush=True)
    else:
        for r in range(int(times)):
            print(json.dumps(replicate(line, seed, r)), flush=True)
