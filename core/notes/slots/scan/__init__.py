"""How do words become animals, numbers and days? One pass; each file here knows the ones before it."""
