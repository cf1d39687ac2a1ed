package org.fallow.platform.web;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;

/**
 * How large what is sent may be, for the sentence that says so; the server itself holds
 * to these limits.
 *
 * @param fileSize of one file
 * @param formSize of a form without files
 */
@Component
record RequestBounds(@Value("${spring.servlet.multipart.max-file-size}") DataSize fileSize,
		@Value("${server.tomcat.max-http-form-post-size}") DataSize formSize) {
}
