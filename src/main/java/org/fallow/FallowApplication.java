package org.fallow;

import java.io.PrintWriter;
import java.util.Arrays;

import org.fallow.assess.AssessCommand;
import org.fallow.platform.EarlyDatabase;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/**
 * Starts Fallow: the pages, the database (its own when none is configured) and the
 * decisions.
 */
@SpringBootApplication
public class FallowApplication {

	/**
	 * Starts the application, or runs the command {@code assess} and ends.
	 * @param args Spring Boot's command line, for example
	 * {@code --spring.profiles.active=demo}; or {@code assess} and what belongs to it
	 */
	public static void main(String[] args) {
		if (args.length > 0 && args[0].equals(AssessCommand.NAME)) {
			System.exit(AssessCommand.run(new PrintWriter(System.out, true), new PrintWriter(System.err, true),
					Arrays.copyOfRange(args, 1, args.length)));
		}
		SpringApplication application = new SpringApplication(FallowApplication.class);
		application.addInitializers(new EarlyDatabase());
		application.run(args);
	}

}
