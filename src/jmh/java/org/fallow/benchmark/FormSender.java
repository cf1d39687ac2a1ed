package org.fallow.benchmark;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * A kept-open HTTP connection that sends forms and reads answers, so that the driver
 * takes as little of the machine as it can.
 */
final class FormSender implements AutoCloseable {

	private final int port;

	private Socket socket;

	private InputStream in;

	private OutputStream out;

	FormSender(int port) throws IOException {
		this.port = port;
		connect();
	}

	/** The server ends a connection after so many answers, and says so in the last one. */
	private void connect() throws IOException {
		this.socket = new Socket(InetAddress.getLoopbackAddress(), this.port);
		this.socket.setTcpNoDelay(true);
		this.in = new BufferedInputStream(this.socket.getInputStream());
		this.out = new BufferedOutputStream(this.socket.getOutputStream());
	}

	/** Sends a form; the answer's status and where it leads to, such as "302 /today". */
	String post(String path, String cookie, String form) throws IOException {
		byte[] body = form.getBytes(StandardCharsets.UTF_8);
		String head = "POST " + path + " HTTP/1.1\r\nHost: localhost:" + this.port
				+ "\r\nAccept: text/html\r\nContent-Type: application/x-www-form-urlencoded\r\nCookie: " + cookie
				+ "\r\nContent-Length: " + body.length + "\r\n\r\n";
		this.out.write(head.getBytes(StandardCharsets.ISO_8859_1));
		this.out.write(body);
		this.out.flush();
		return answer();
	}

	private String answer() throws IOException {
		String status = line().substring("HTTP/1.1 ".length()).strip();
		String location = "";
		int length = -1;
		boolean last = false;
		for (String line = line(); !line.isEmpty(); line = line()) {
			String lower = line.toLowerCase(Locale.ROOT);
			if (lower.startsWith("content-length:")) {
				length = Integer.parseInt(line.substring("content-length:".length()).strip());
			}
			last |= lower.equals("connection: close");
			if (lower.startsWith("location:")) {
				location = line.substring("location:".length()).strip().replaceFirst("^http://localhost:\\d+", "");
			}
		}
		if (length < 0) {
			throw new IOException("an answer without a length: " + status);
		}
		this.in.skipNBytes(length);
		if (last) {
			close();
			connect();
		}
		return status + " " + location;
	}

	private String line() throws IOException {
		StringBuilder line = new StringBuilder();
		for (int c = this.in.read(); c != '\n'; c = this.in.read()) {
			if (c < 0) {
				throw new IOException("the connection ended");
			}
			if (c != '\r') {
				line.append((char) c);
			}
		}
		return line.toString();
	}

	@Override
	public void close() throws IOException {
		this.socket.close();
	}

}
