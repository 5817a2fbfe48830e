"""What counts as competence: requirements, evidence, standing, and the log that keeps it honest."""
