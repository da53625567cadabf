"""The plan for other programs: plan.json, CSV, DXF."""
