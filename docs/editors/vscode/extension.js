// The extension as an editor starts it. What it does stands in lib; that the program runs as a
// process beside the editor is said here alone, so that a trial may connect it otherwise.
"use strict";

const { Session } = require("./lib/session");
const { connect } = require("./lib/server");

let session;

exports.activate = async (context) => {
  session = new Session(context, connect);
  await session.start();
  return { client: () => session.client };
};

exports.deactivate = () => session?.stop();
