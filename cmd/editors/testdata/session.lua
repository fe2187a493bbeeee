-- A session of Neovim with the server: $PLAN is opened, and what is seen is written to
-- $SEEN, one line for each step.
local seen = {}
local function note(...)
  table.insert(seen, table.concat(vim.tbl_map(tostring, { ... }), ' '))
end

-- await waits ten seconds at most; what does not come is missed by the steps after it.
local function await(there)
  vim.wait(10000, there, 10)
end

local function findings()
  local list = {}
  for _, d in ipairs(vim.diagnostic.get(0)) do
    table.insert(list, string.format('%d:%d %d %s', d.lnum + 1, d.col + 1, d.severity, d.code or d.user_data.lsp.code))
  end
  table.sort(list)
  return table.concat(list, ', ')
end

local function line(n)
  return vim.api.nvim_buf_get_lines(0, n - 1, n, true)[1]
end

-- ask asks the server of the place of the cursor.
local function ask(method, more)
  local params = vim.tbl_extend('force', vim.lsp.util.make_position_params(0, 'utf-16'), more or {})
  for _, answer in pairs(vim.lsp.buf_request_sync(0, method, params, 10000) or {}) do
    if answer.error then
      note('error', method, answer.error.message)
    end
    return answer.result
  end
end

local function main()
  require('pullscore').setup({ cmd = { vim.env.PROGRAM, 'lsp' } })
  vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.PLAN))
  note('file type', vim.bo.filetype)
  await(function() return #vim.diagnostic.get(0) > 0 end)
  note('findings', findings())
  note('keys', vim.bo.omnifunc, vim.bo.tagfunc)

  local client = vim.lsp.buf_get_clients(0)
  client = client[next(client)]
  note('root', vim.fn.fnamemodify(client.config.root_dir, ':p') == vim.fn.fnamemodify(vim.env.PLAN, ':p:h') .. '/')

  -- Where the cursor is is told to the server.
  local told = {}
  local notify = client.notify
  client.notify = function(method, params)
    told[method] = params
    return notify(method, params)
  end
  vim.api.nvim_win_set_cursor(0, { 3, 2 })
  vim.cmd('doautocmd CursorMoved')
  local cursor = told['pullscore/cursor'] or { position = {}, textDocument = {} }
  note('cursor', cursor.position.line, cursor.textDocument.uri == vim.uri_from_fname(vim.env.PLAN))
  client.notify = notify

  -- The layout.
  note('line 4', line(4))
  if vim.lsp.buf.format then
    vim.lsp.buf.format({ timeout_ms = 10000 })
  else
    vim.lsp.buf.formatting_sync(nil, 10000)
  end
  note('laid out', line(4))

  -- A mistake mended by hand.
  vim.cmd([[14s/1,2/1.2/]])
  await(function() return #vim.diagnostic.get(0) == 1 end)
  note('findings', findings())

  -- A cure.
  vim.api.nvim_win_set_cursor(0, { 13, 3 })
  local params = vim.lsp.util.make_range_params(0, 'utf-16')
  params.context = { diagnostics = vim.tbl_map(function(d) return d.user_data.lsp end, vim.diagnostic.get(0)) }
  for _, answer in pairs(vim.lsp.buf_request_sync(0, 'textDocument/codeAction', params, 10000) or {}) do
    for _, action in ipairs(answer.result or {}) do
      if action.kind == 'quickfix' and action.title:find('over 1 s', 1, true) then
        if not action.edit then
          action = client.request_sync('codeAction/resolve', action, 10000, 0).result
        end
        vim.lsp.util.apply_workspace_edit(action.edit, 'utf-16')
        break
      end
    end
  end
  await(function() return #vim.diagnostic.get(0) == 0 end)
  note('cured', line(13), '|', findings())

  -- What stands at the cursor.
  vim.api.nvim_win_set_cursor(0, { 13, 12 })
  local hover = ask('textDocument/hover').contents
  note('hover', hover.kind, hover.value:find('1.1 m', 1, true) ~= nil)
  local to = ask('textDocument/definition')
  to = to[1] or to
  note('declared in line', (to.range or to.targetSelectionRange).start.line + 1)
  note('mentioned', #ask('textDocument/references', { context = { includeDeclaration = true } }))

  -- What may come next.
  local column = line(13):find('KETTLE') - 1
  vim.api.nvim_win_set_cursor(0, { 13, column })
  local items = vim.lsp.util.extract_completion_items(ask('textDocument/completion'))
  local labels = vim.tbl_map(function(item) return item.label end, items)
  note('offered', vim.tbl_contains(labels, 'KETTLE'), vim.tbl_contains(labels, 'PEVIN'))
  note('usage', ask('textDocument/signatureHelp').signatures[1].label:sub(1, 14))

  -- A name.
  vim.lsp.buf.rename('POT')
  await(function() return line(5):find('POT') ~= nil end)
  note('renamed', line(5), '|', line(13))

  -- The end: the server says nothing, and goes.
  note('messages', vim.trim(vim.fn.execute('messages')))
  client.stop()
  await(function() return client.is_stopped() end)
  note('stopped', client.is_stopped())
end

local ok, fault = pcall(main)
if not ok then
  note('fault', fault)
end
vim.fn.writefile(seen, vim.env.SEEN)
vim.cmd('quitall!')
