"""Usage: run.py reference|lowmere REPLICATIONS [SEED]: one JSON object a line for every replication, with the
good pieces, the share of the window in each state, and the stops of each station. Needs python3-simpy3 of Debian."""

import json
import sys

from lines import replicate

if __name__ == "__main__":
    seed = sys.argv[3] if len(sys.argv) > 3 else "1"
    for r in range(int(sys.argv[2])):
        print(json.dumps(replicate(sys.argv[1], seed, r)), flush=True)
