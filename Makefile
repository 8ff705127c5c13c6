# `make site` and `make test` do all their own set-up. Everything they make stands in .venv, node_modules, .cache and site.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
SITE_STAMP := $(VENV)/.site-ready
TEST_STAMP := $(VENV)/.test-ready
export PIP_DISABLE_PIP_VERSION_CHECK := 1

.PHONY: site serve test test-long check types bench schema clean

site: $(SITE_STAMP)
	@$(BIN)/python -m mkdocs build --quiet
	@echo
	@echo "The site stands in the folder site."
	@echo "  With a server:   $(BIN)/python -m http.server --directory site 8000   then open http://localhost:8000/"
	@echo "  From the folder: open site/index.html"
	@echo "  On a phone:      copy site/powered-respirator.html to it and open that one file"

serve: $(SITE_STAMP)
	@$(BIN)/python -m mkdocs serve

test: $(TEST_STAMP) check
	@$(BIN)/python -m pytest -n 2 --dist worksteal -m "not long"

test-long: $(TEST_STAMP) check
	@$(BIN)/python -m pytest -n 2 --dist worksteal

check: $(TEST_STAMP)
	@$(BIN)/python -m ruff check .
	@$(BIN)/python -m ruff format --check .
	@$(MAKE) --no-print-directory types

# mypy follows no import hook, so it sees the package under its installed name through a link.
types: $(TEST_STAMP)
	@mkdir -p .cache/typing && ln -sfn ../../builder .cache/typing/journeybook
	@MYPYPATH=.cache/typing $(BIN)/python -m mypy -p journeybook
	@node_modules/.bin/tsc -p tests/js/tsconfig.json

bench: $(TEST_STAMP)
	@$(BIN)/python benchmarks/build_time.py
	@$(BIN)/python benchmarks/load_time.py
	@$(BIN)/python benchmarks/remark_time.py
	@$(BIN)/python benchmarks/verify_time.py
	@$(BIN)/python benchmarks/certify_time.py
	@$(BIN)/python benchmarks/page_weight.py
	@node benchmarks/first_view.mjs

schema: $(SITE_STAMP)
	@$(BIN)/journeybook schema schema

$(BIN)/python:
	@$(PYTHON) -c 'import sys; sys.exit(0 if sys.version_info >= (3, 11) else "Python 3.11 or newer is needed; this is " + sys.version)'
	@$(PYTHON) -m venv $(VENV) || { echo "venv could not be made; on Debian: apt-get install python3-venv" >&2; exit 1; }

$(SITE_STAMP): $(BIN)/python pyproject.toml
	@$(BIN)/python -m pip install --quiet --editable .
	@touch $@

$(TEST_STAMP): $(BIN)/python pyproject.toml package.json package-lock.json tools/set_up_tests.sh
	@$(BIN)/python -m pip install --quiet --editable '.[words,test]'
	@bash tools/set_up_tests.sh
	@touch $@ $(SITE_STAMP)

clean:
	rm -rf $(VENV) node_modules .cache site build dist *.egg-info
