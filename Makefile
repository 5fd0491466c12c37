# One word a chore; the same words in CI. A fresh machine needs Python 3.11 or newer and make.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
READY := $(VENV)/.ready
EXAMPLES := $(sort $(wildcard examples/*.yaml))

.PHONY: demo test setup lint types imports unit golden docs pictures bench clean

demo: $(READY)
	@for f in $(EXAMPLES); do \
	  name=$$(basename $$f .yaml); echo "== $$name"; \
	  $(BIN)/boardwright plan $$f --out out/$$name || exit 1; \
	done
	@echo "plans are in out/*/plan.pdf"

test: lint types imports unit

setup: $(READY)

$(READY): pyproject.toml constraints.txt
	$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11) and "Python 3.11 or newer is needed")'
	$(PYTHON) -m venv $(VENV)
	$(BIN)/pip install --quiet --disable-pip-version-check -c constraints.txt -e '.[dev]'
	@touch $(READY)

lint: $(READY)
	$(BIN)/ruff check src tests tools
	$(BIN)/ruff format --check --quiet src tests tools

types: $(READY)
	$(BIN)/mypy

imports: $(READY)
	$(BIN)/lint-imports

unit: $(READY)
	$(BIN)/pytest -n 2

golden: $(READY)
	$(BIN)/pytest -n 2 tests/errors tests/golden --update

docs: $(READY)
	$(BIN)/python tools/plan_format.py
	$(BIN)/python tools/finding_docs.py
	$(BIN)/python tools/check_docs.py
	$(BIN)/python tools/design_docs.py
	$(BIN)/python tools/command_docs.py
	$(BIN)/python tools/rack_docs.py
	$(BIN)/python tools/joint_docs.py

# The picture in the README: the cover of a plan. Needs pdftoppm (on Debian: poppler-utils).
pictures: $(READY)
	$(BIN)/boardwright plan examples/ribbon-chest.yaml --out out/ribbon-chest
	pdftoppm -r 80 -f 1 -l 1 -png -singlefile out/ribbon-chest/plan.pdf docs/pictures/ribbon-chest-cover

# SETS names the folder of the published sets of layouts (see docs/stock.md); without it that table is left out.
bench: $(READY)
	$(BIN)/python tools/bench.py
	$(BIN)/python tools/bench_sets.py $(SETS)

clean:
	rm -rf out build .mypy_cache .ruff_cache .hypothesis .import_linter_cache
