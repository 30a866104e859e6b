// danfojs-node draws a frame as text with this, and loads a validator of schemas for it; rimelog never draws a frame.
exports.table = () => { throw new Error('a frame is not drawn as text in this build'); };
