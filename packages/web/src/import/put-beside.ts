import type { Problem } from '@dawnlift/core/result'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'

/** Puts a file beside the job: on the server if there is one, and in the app. Answers with what kept it from going there. */
export async function putBeside(name: string, content: Uint8Array): Promise<readonly Problem[]> {
  const { saved, revision, addFile } = useApp.getState()
  const serverless = saved === 'local' && revision === undefined
  const refused = serverless ? undefined : await send(name, content)
  if (refused !== undefined)
    return [{ code: 'import/not-stored', at: name, say: words.walls.drawing.fileRefused(refused) }]
  addFile(name, content)
  return []
}

async function send(name: string, content: Uint8Array): Promise<string | undefined> {
  try {
    const answer = await fetch(`/api/job/files/${encodeURIComponent(name)}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/octet-stream' },
      body: new Blob([new Uint8Array(content)]),
    })
    if (answer.ok) return undefined
    const { problems } = (await answer.json()) as { readonly problems?: readonly Problem[] }
    return problems?.map(each => each.say).join(' ') ?? String(answer.status)
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  }
}
