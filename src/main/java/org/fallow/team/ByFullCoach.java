package org.fallow.team;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

import org.springframework.security.access.prepost.PreAuthorize;

/**
 * Lets only a head coach or coach of groups who covers the athlete named by the first
 * argument call a method: whatever can loosen a clearance. A deputy may not.
 */
@Target({ ElementType.METHOD, ElementType.TYPE })
@Retention(RetentionPolicy.RUNTIME)
@PreAuthorize("@athleteAccess.mayLoosen(#a0)")
public @interface ByFullCoach {

}
