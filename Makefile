# Needs Go, Node (for the chart engine of the report) and make.

ENGINE  := internal/chartkit/dist/echarts.js.gz
TOOL    := go tool -modfile=tools.mod
# The program is built with a profile of its engine; measure what is built.
PGO     := -pgo=$(CURDIR)/cmd/tuckline/default.pgo
VERSION := $(shell git describe --tags --always --dirty 2>/dev/null)
NAMED   := -X main.version=$(VERSION)
STATIC  := CGO_ENABLED=0 go build -trimpath -ldflags "-s -w $(NAMED)"

.PHONY: help demo test proof bench build generate lint clean

help: ## show this list
	@grep -E '^[a-z]+:.*##' $(MAKEFILE_LIST) | sed -E 's/:.*## /\t/' | expand -t 12

demo: $(ENGINE) ## simulate the line of Lowmere: summary here, report in a new folder
	go run -ldflags "$(NAMED)" ./cmd/tuckline run scenarios/lowmere.yaml

test: $(ENGINE) ## run all tests; TESTFLAGS are passed on
	go test $(TESTFLAGS) ./...

proof: ## all cases with exact results (a quarter of an hour), how often intervals hold the truth, a process model in Python
	go run -ldflags "$(NAMED)" ./cmd/tuckline proof --full
	go test ./internal/proof -run IntervalsCover -studies 1000 -count 1 -v
	TUCKLINE_PROOF=1 go test -tags proof -run TestIndependent -timeout 20m -count 1 -v ./sim

bench: ## measure the engine, then studies: two workers against one, a year, a sweep
	go test $(PGO) -run '^$$' -bench . -benchmem ./sim/...
	go test $(PGO) -run '^$$' -bench . ./internal/study

build: $(ENGINE) ## make one static binary, chart engine inside: ./tuckline
	$(STATIC) -o tuckline ./cmd/tuckline

generate: ## build the chart engine anew from npm
	go generate ./internal/chartkit

$(ENGINE): internal/chartkit/web/package-lock.json internal/chartkit/web/entry.js
	go generate ./internal/chartkit

lint: ## formatting, vet, staticcheck
	@test -z "$$($(TOOL) gofumpt -l .)" || { echo "gofumpt would change:"; $(TOOL) gofumpt -l .; exit 1; }
	go vet ./...
	$(TOOL) staticcheck ./...

clean: ## remove what was built
	rm -rf tuckline dist internal/chartkit/web/node_modules $(ENGINE)
