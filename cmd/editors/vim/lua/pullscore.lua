-- Pullscore in Neovim, from 0.7 on: starts `pullscore lsp` for plans and kits.
--
--   require('pullscore').setup()
--   require('pullscore').setup({ cmd = { '/opt/pullscore', 'lsp' }, hints = 'pulls', units = 'metric' })

local M = {}

local options = {
  cmd = { 'pullscore', 'lsp' },
  hints = 'all', -- 'all', 'pulls' or 'none'
  units = 'plan', -- 'plan', 'metric' or 'imperial'
  on_attach = nil, -- called with the client and the buffer
}

-- root_of returns the folder of a plan's repository, else that of the plan.
local function root_of(path)
  local folder = vim.fn.fnamemodify(path, ':p:h')
  local git = vim.fn.finddir('.git', vim.fn.escape(folder, ' ,;') .. ';')
  if git == '' then
    return folder
  end
  return vim.fn.fnamemodify(git, ':p:h:h')
end

-- running holds the client of every folder: Neovim 0.7 has no vim.lsp.start, which
-- keeps them.
local running = {}

-- set_keys has CTRL-X CTRL-O offer what may come next, and CTRL-] go to a name, unless
-- they do something else already. From 0.8 on Neovim does so itself.
local function set_keys(buffer)
  if vim.bo[buffer].omnifunc == '' then
    vim.bo[buffer].omnifunc = 'v:lua.vim.lsp.omnifunc'
  end
  if vim.bo[buffer].tagfunc == '' then
    vim.bo[buffer].tagfunc = 'v:lua.vim.lsp.tagfunc'
  end
end

-- point tells the server where the cursor is, so that the score lights the pull there.
local function point(buffer)
  for _, client in pairs(vim.lsp.buf_get_clients(buffer)) do
    if client.name == 'pullscore' then
      client.notify('pullscore/cursor', vim.lsp.util.make_position_params(0, client.offset_encoding))
    end
  end
end

local function attach(buffer, config)
  if vim.lsp.start then
    vim.lsp.start(config, { bufnr = buffer })
    return
  end
  local id = running[config.root_dir]
  if not (id and vim.lsp.get_client_by_id(id)) then
    id = vim.lsp.start_client(config)
    running[config.root_dir] = id
  end
  if id then
    vim.lsp.buf_attach_client(buffer, id)
    set_keys(buffer)
  end
end

-- start starts the server for a buffer, or joins the one that runs for its folder.
function M.start(buffer)
  local path = vim.api.nvim_buf_get_name(buffer)
  if path == '' then
    return
  end
  if vim.fn.executable(options.cmd[1]) == 0 then
    vim.notify_once('Pullscore: ' .. options.cmd[1] .. ' was not found. In a copy of its repository, run: go install ./cmd/pullscore', vim.log.levels.WARN)
    return
  end
  local root = root_of(path)
  attach(buffer, {
    name = 'pullscore',
    cmd = options.cmd,
    root_dir = root,
    workspace_folders = { { uri = vim.uri_from_fname(root), name = vim.fn.fnamemodify(root, ':t') } },
    init_options = { hints = options.hints, units = options.units },
    on_attach = options.on_attach,
  })
end

-- setup starts the server for every plan and kit that is opened from now on, and for
-- those that are open.
function M.setup(given)
  options = vim.tbl_extend('force', options, given or {})
  vim.api.nvim_create_autocmd('FileType', {
    group = vim.api.nvim_create_augroup('pullscore', { clear = true }),
    pattern = 'pull',
    callback = function(event)
      M.start(event.buf)
      vim.api.nvim_create_autocmd('CursorMoved', {
        group = 'pullscore',
        buffer = event.buf,
        callback = function()
          point(event.buf)
        end,
      })
    end,
  })
  for _, buffer in ipairs(vim.api.nvim_list_bufs()) do
    if vim.api.nvim_buf_is_loaded(buffer) and vim.bo[buffer].filetype == 'pull' then
      M.start(buffer)
    end
  end
end

return M
