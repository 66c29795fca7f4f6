"""The papers that leave the office, as PDF: made from documents and replayed working alone."""
