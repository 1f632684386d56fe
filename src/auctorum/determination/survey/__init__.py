"""How many plants of a taxon there are, by whose definition."""
