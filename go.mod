module tuckline

go 1.26.0
