import { watch } from "node:fs";
import { createServer, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import type { Live, LivePage } from "./live.ts";

/** This computer's file watcher and an HTTP server of its own, which nobody else can reach. */
export function nodeLive(ended: () => Promise<void>): Live {
  return {
    ended,
    watchFolder: (folder, changed) => {
      watch(folder, (_, name) => {
        if (name === null || !/node_modules|\.tmp$/.test(name)) changed();
      });
    },
    serve,
  };
}

async function serve(page: () => string): Promise<LivePage> {
  const listeners = new Set<ServerResponse>();
  const server = createServer((request, response) => {
    // Another site's page must not reach this one by a name that it points here.
    if (!/^(127\.0\.0\.1|localhost)(:\d+)?$/.test(request.headers.host ?? "")) {
      response.writeHead(403).end();
    } else if (request.url === "/changes") {
      response.writeHead(200, { "content-type": "text/event-stream", "cache-control": "no-store" });
      response.write(":\n\n");
      listeners.add(response);
      response.on("close", () => listeners.delete(response));
    } else if (request.url === "/") {
      response.writeHead(200, { "content-type": "text/html; charset=utf-8", "cache-control": "no-store" });
      response.end(page());
    } else response.writeHead(404).end();
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/`,
    announce: () => {
      for (const response of listeners) response.write("data: new\n\n");
    },
    close: () => {
      for (const response of listeners) response.end();
      server.close();
    },
  };
}
