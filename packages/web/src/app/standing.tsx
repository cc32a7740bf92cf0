import {
  ActionIcon,
  Button,
  Group,
  SegmentedControl,
  Tooltip,
  useComputedColorScheme,
  useMantineColorScheme,
} from '@mantine/core'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'

/** Where the document stands, undo and redo, units and light. */
export function Standing() {
  const saved = useApp(state => state.saved)
  const units = useApp(state => state.units)
  const canUndo = useApp(state => state.past.length > 0)
  const canRedo = useApp(state => state.future.length > 0)
  const { undo, redo, setUnits } = useApp.getState()
  const { setColorScheme } = useMantineColorScheme()
  const scheme = useComputedColorScheme('light')
  return (
    <Group gap="sm">
      <span className="soft" role="status">
        {words.saved[saved]}
      </span>
      <Tooltip label={words.undo}>
        <ActionIcon variant="default" size="lg" disabled={!canUndo} onClick={undo} aria-label={words.undo}>
          ↶
        </ActionIcon>
      </Tooltip>
      <Tooltip label={words.redo}>
        <ActionIcon variant="default" size="lg" disabled={!canRedo} onClick={redo} aria-label={words.redo}>
          ↷
        </ActionIcon>
      </Tooltip>
      <SegmentedControl
        size="xs"
        aria-label={words.unitsLabel}
        value={units}
        onChange={value => setUnits(value as typeof units)}
        data={[
          { value: 'metric', label: 'm' },
          { value: 'imperial', label: 'ft' },
        ]}
      />
      <Button
        size="compact-sm"
        variant="default"
        onClick={() => setColorScheme(scheme === 'dark' ? 'light' : 'dark')}
      >
        {scheme === 'dark' ? words.theme.light : words.theme.dark}
      </Button>
    </Group>
  )
}
