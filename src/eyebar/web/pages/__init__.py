"""The pages: each reads its request, calls the library once, makes a view and fills a template."""
