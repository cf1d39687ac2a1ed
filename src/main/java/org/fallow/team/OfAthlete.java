package org.fallow.team;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

import org.springframework.security.access.prepost.PreAuthorize;

/**
 * Lets only the athlete named by the first argument, and the coaches who cover the
 * athlete, call a method. The order of the arguments is part of the promise: the athlete
 * comes first.
 */
@Target({ ElementType.METHOD, ElementType.TYPE })
@Retention(RetentionPolicy.RUNTIME)
@PreAuthorize("@athleteAccess.maySee(#a0)")
public @interface OfAthlete {

}
