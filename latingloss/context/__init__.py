"""Context: which reading of each word is meant, from the words around it."""
