// What this phone keeps of cupping tables, for whoever signs out or comes to sign in. Changes that the server has not
// taken yet stay for the person who made them; everything else goes, so that the next person on this phone reads none of it.
const name = "greenledger-table";

const answer = request => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

// Null where no table was ever opened on this phone: asking for it must not make it.
async function open() {
  return window.indexedDB && (await indexedDB.databases()).some(one => one.name === name) ? answer(indexedDB.open(name)) : null;
}

const all = async database => {
  const transaction = database.transaction(["acts", "sheets"]);
  const [acts, sheets] = await Promise.all([answer(transaction.objectStore("acts").getAll()), answer(transaction.objectStore("sheets").getAllKeys())]);
  return { acts, sheets };
};

// How many changes wait on this phone for the network.
export async function waiting() {
  const database = await open();
  if (!database) {
    return 0;
  }
  try {
    return (await all(database)).acts.length;
  } finally {
    database.close();
  }
}

// Nobody is signed in: the kept pages go, and every sheet of which nothing waits.
export async function forget() {
  if (window.caches) {
    await Promise.all((await caches.keys()).filter(one => one.startsWith(name)).map(one => caches.delete(one)));
  }
  Object.keys(localStorage).filter(one => one.startsWith(name)).forEach(one => localStorage.removeItem(one));
  const database = await open();
  if (!database) {
    return;
  }
  try {
    const { acts, sheets } = await all(database);
    const held = new Set(acts.map(act => `${act.place}/${act.code}`));
    const store = database.transaction("sheets", "readwrite").objectStore("sheets");
    await Promise.all(sheets.filter(key => !held.has(key)).map(key => answer(store.delete(key))));
  } finally {
    database.close();
  }
}
