package org.fallow.platform;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Runs the tests of a class as the application itself runs: what a request may is what
 * its person may. Only the preparation before each test works for the purpose OPERATION.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
public @interface NobodyOperates {

}
