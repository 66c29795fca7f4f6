# What to type in this folder. Plain make (3.81 will do) and POSIX sh.
# Another Python:  make demo PYTHON=/usr/local/bin/python3.12

# What Python compiles is kept beside it, for the many processes that one run of the tests starts.
export PYTHONDONTWRITEBYTECODE =

.PHONY: help demo test lint bench soak tools clean environment

help:
	@echo 'make demo    rate an invented bridge and say what to type next'
	@echo 'make test    ruff, mypy and every test that this machine has the tools for'
	@echo 'make lint    ruff and mypy alone'
	@echo 'make bench   ratios of speed, measured in one run'
	@echo 'make soak    the long runs, by hand'
	@echo 'make tools   what the tests need from outside Python (Debian, as root)'
	@echo 'make clean   take away the environment and all caches'

environment:
	@PYTHON='$(PYTHON)' sh tools/environment.sh

demo:
	@echo 'This builds an environment in .venv (the first time only), then rates an invented bridge.'
	@PYTHON='$(PYTHON)' sh tools/environment.sh
	@.venv/bin/python -m eyebar demo

test: lint
	@OPENBLAS_NUM_THREADS=1 OMP_NUM_THREADS=1 .venv/bin/python -m pytest -n auto --dist loadfile

lint: environment
	@.venv/bin/python -m ruff check .
	@.venv/bin/python -m mypy --num-workers 2

bench: environment
	@OPENBLAS_NUM_THREADS=1 OMP_NUM_THREADS=1 .venv/bin/python -m pytest -q -s benchmarks

soak: environment
	@.venv/bin/python -m tests.store.killed 1000
	@.venv/bin/python -m tests.web.soak 60
	@EYEBAR_LAWS=soak .venv/bin/python -m pytest -q tests/laws tests/rating/test_pin_lanes_all_round.py

tools:
	@sh tools/tools.sh

clean:
	rm -rf .venv .venv.part .hypothesis .mypy_cache .pytest_cache .ruff_cache build dist
	find src tests benchmarks -name __pycache__ -type d -prune -exec rm -rf {} +
