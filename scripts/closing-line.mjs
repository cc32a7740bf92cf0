/** Vitest reporter: closes a run with one plain line that any machine can read. */
export default class ClosingLine {
  onTestRunEnd(modules) {
    const count = { passed: 0, failed: 0, skipped: 0 }
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const state = test.result().state
        if (state in count) count[state] += 1
      }
      // A file that does not even load fails without a test of its own.
      if (module.state() === 'failed' && [...module.children.allTests('failed')].length === 0)
        count.failed += 1
    }
    process.stdout.write(`\n${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped\n`)
  }
}
