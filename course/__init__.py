"""The site: people, lessons, desks and exports."""
