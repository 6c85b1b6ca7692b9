// Command seamtally turns a joint list into a priced workbook, a results file and a traveller.
package main

func main() {}
