package org.fallow.platform;

import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.core.annotation.AliasFor;

/**
 * The whole application on a real PostgreSQL, migrated as {@code fallow_owner} and used
 * as {@code fallow_app}. All such tests of one JVM share the database, and those with the
 * same settings the application; a test leaves no rows that disturb another, for example
 * by making its own people.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@SpringBootTest
@AutoConfigureMockMvc
@Import(DatabaseForTests.class)
@ExtendWith(AsOperation.class)
public @interface DatabaseTest {

	/**
	 * Mock requests unless a test needs a port to talk to.
	 * @return how the web side runs
	 */
	@AliasFor(annotation = SpringBootTest.class)
	WebEnvironment webEnvironment() default WebEnvironment.MOCK;

	/**
	 * Settings of this test alone; each different set costs another application start.
	 * @return {@code name=value} pairs
	 */
	@AliasFor(annotation = SpringBootTest.class)
	String[] properties() default {};

}
