"""The workbench: the whole of a bridge in a browser, on the register. Pages work without script."""
