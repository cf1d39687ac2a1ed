package org.fallow.team;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

import org.springframework.security.access.prepost.PreAuthorize;

/**
 * Lets only head coaches and coaches of groups who have the group named by the first
 * argument in their charge call a method; no deputy. The order of the arguments is part
 * of the promise: the group comes first.
 */
@Target({ ElementType.METHOD, ElementType.TYPE })
@Retention(RetentionPolicy.RUNTIME)
@PreAuthorize("@athleteAccess.mayProgramme(#a0)")
public @interface ByGroupCoach {

}
