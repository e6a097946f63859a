// What is done when the server ends by itself: it is started again, but not for ever.
"use strict";

const most = 4; // times that it is started again
const within = 3 * 60 * 1000;

// What the client understands: see ErrorAction and CloseAction there.
const goOn = { action: 1, handled: true };
const leave = { action: 1, handled: true };
const startAgain = { action: 2, handled: true };

class Endings {
  // tooOften is called when it is not started again.
  constructor(tooOften, clock = Date.now) {
    this.tooOften = tooOften;
    this.clock = clock;
    this.times = [];
    this.began = false; // until then whoever starts it hears why it could not
  }

  error() {
    return goOn; // what cannot be written is told by the end that follows
  }

  closed() {
    if (!this.began) return leave;
    const now = this.clock();
    this.times = [...this.times.filter((time) => now - time < within), now];
    if (this.times.length <= most) return startAgain;
    this.tooOften();
    return leave;
  }
}

module.exports = { Endings };
