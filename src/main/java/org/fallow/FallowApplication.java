package org.fallow;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/**
 * Starts Fallow: the pages, the database (its own when none is configured) and the
 * decisions.
 */
@SpringBootApplication
public class FallowApplication {

	/**
	 * Starts the application.
	 * @param args Spring Boot's command line, for example
	 * {@code --spring.profiles.active=demo}
	 */
	public static void main(String[] args) {
		SpringApplication.run(FallowApplication.class, args);
	}

}
