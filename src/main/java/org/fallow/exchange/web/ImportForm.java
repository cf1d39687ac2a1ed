package org.fallow.exchange.web;

import java.util.UUID;

import org.jspecify.annotations.Nullable;

import org.springframework.web.multipart.MultipartFile;

/**
 * A file to be imported, as the page sends it.
 *
 * @param teamId into which team; absent if not told
 * @param file the file; absent if none was chosen
 */
record ImportForm(@Nullable UUID teamId, @Nullable MultipartFile file) {
}
