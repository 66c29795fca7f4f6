"""`python -m eyebar` is the command line."""

from eyebar.cli import main

main()
