"""Where rendered pictures are made, kept on disk and found again."""
