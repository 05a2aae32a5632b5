/** In the page: questions to the workers of one kind wait from `hold(kind)` on, until they are let go. */
export const HOLD = `(() => {
  const post = Worker.prototype.postMessage;
  const held = [];
  let kind = '';
  Worker.prototype.postMessage = function (message) {
    if (message.kind === kind) held.push(() => post.call(this, message));
    else post.call(this, message);
  };
  window.hold = (what) => { kind = what; };
  window.held = () => held.length;
  window.letGo = () => { kind = ''; for (const go of held.splice(0)) go(); };
})()`;
