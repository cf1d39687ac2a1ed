package org.fallow.platform.web;

import org.springframework.boot.test.context.TestComponent;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * A page of the tests with a fault that quotes what it was asked.
 */
@TestComponent
@Controller
class FaultyPage {

	@GetMapping("/faulty/{name}")
	String fail(@PathVariable String name) {
		throw new IllegalStateException("nothing good of " + name, new java.sql.SQLException("row " + name, "23505"));
	}

}
