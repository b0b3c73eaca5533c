package fittings

func buildTee(c *checker) built      { c.refuse("kind", "", "coming"); return built{} }
func buildSpigot(c *checker) built   { c.refuse("kind", "", "coming"); return built{} }
func buildBreeches(c *checker) built { c.refuse("kind", "", "coming"); return built{} }
