-- What somebody does in Neovim with a process that has a slip in it. The answers go to a file.
local answers = {}

local function wait(what, holds)
  if not vim.wait(60000, holds, 20) then
    error('waited in vain for ' .. what .. '; last said: ' .. vim.inspect(vim.diagnostic.get(0)))
  end
end

local function line(number)
  return vim.api.nvim_buf_get_lines(0, number - 1, number, true)[1]
end

-- goes to a text and gives the number of its line
local function goto_text(text)
  vim.fn.cursor(1, 1)
  local found = vim.fn.search('\\V' .. text, 'cW')
  if found == 0 then
    error('no ' .. text)
  end
  return found
end

-- counts the lenses that are shown
local function lenses()
  local shown = 0
  for name, space in pairs(vim.api.nvim_get_namespaces()) do
    if name:find('codelens') then
      shown = shown + #vim.api.nvim_buf_get_extmarks(0, space, 0, -1, {})
    end
  end
  return shown
end

local function messages()
  local list = {}
  for _, d in ipairs(vim.diagnostic.get(0)) do
    table.insert(list, (d.code or '') .. ': ' .. d.message)
  end
  return list
end

local function faulty()
  return #vim.diagnostic.get(0, { severity = vim.diagnostic.severity.ERROR }) > 0
end

-- presses keys as a person does, mappings and all
local function press(keys)
  vim.api.nvim_feedkeys(vim.api.nvim_replace_termcodes(keys, true, true, true), 'xm', false)
end

local function floating()
  for _, window in ipairs(vim.api.nvim_list_wins()) do
    if vim.api.nvim_win_get_config(window).relative ~= '' then
      return window
    end
  end
end

local function run()
  answers.filetype = vim.bo.filetype
  wait('the server', function()
    return #vim.lsp.get_active_clients() > 0 and vim.lsp.get_active_clients()[1].server_capabilities ~= nil
  end)

  -- diagnose
  local slip = goto_text('watter')
  wait('findings', faulty)
  answers.findings = messages()

  -- repair
  answers.actions = {}
  vim.ui.select = function(items, options, choose)
    for _, item in ipairs(items) do
      table.insert(answers.actions, (options.format_item(item)))
    end
    choose(items[1], 1)
  end
  press('<F4>')
  wait('the repair', function()
    return not line(slip):find('watter')
  end)
  answers.repaired = line(slip)
  wait('no finding', function()
    return not faulty()
  end)

  -- hints: this client has none, and asks by hand; they are there once the forecast is
  local function hints()
    local list = {}
    local asked = vim.lsp.buf_request_sync(0, 'textDocument/inlayHint', {
      textDocument = vim.lsp.util.make_text_document_params(),
      range = { start = { line = 0, character = 0 }, ['end'] = { line = vim.fn.line('$'), character = 0 } },
    }, 60000)
    for _, answer in pairs(asked or {}) do
      for _, hint in ipairs(answer.result or {}) do
        local label = type(hint.label) == 'table' and hint.label[1].value or hint.label
        table.insert(list, vim.trim(line(hint.position.line + 1)) .. ' | ' .. label)
      end
    end
    answers.hints = list
    return #list > 0
  end
  wait('hints', hints)

  -- what a process comes to
  vim.lsp.codelens.refresh()
  wait('a lens', function()
    return #vim.lsp.codelens.get(0) > 0 and vim.lsp.codelens.get(0)[1].command ~= nil
  end)
  answers.lens = vim.lsp.codelens.get(0)[1].command.title

  -- list of parts
  press('gO')
  wait('the parts', function()
    return #vim.fn.getqflist() > 0
  end)
  answers.parts = vim.tbl_map(function(item)
    return item.text
  end, vim.fn.getqflist())
  vim.cmd('cclose')

  -- hover
  goto_text('cure at')
  press('K')
  wait('the hover', floating)
  answers.hover = table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(floating()), 0, -1, true), '\n')
  vim.api.nvim_win_close(floating(), true)

  -- complete
  local cure = goto_text('cure at')
  vim.fn.append(cure, '    co')
  local offered = vim.lsp.buf_request_sync(0, 'textDocument/completion', {
    textDocument = vim.lsp.util.make_text_document_params(),
    position = { line = cure, character = 6 },
  }, 60000)
  answers.offers = {}
  for _, answer in pairs(offered or {}) do
    for _, item in ipairs((answer.result or {}).items or answer.result or {}) do
      table.insert(answers.offers, item.label)
    end
  end

  -- and takes what the editor lists first behind some words: its own way to find where they begin
  local took
  vim.o.virtualedit = 'onemore'
  local mode, complete = vim.fn.mode, vim.fn.complete
  vim.fn.mode = function()
    return 'i'
  end
  vim.fn.complete = function(column, items)
    took = vim.api.nvim_get_current_line():sub(1, column - 1) .. (items[1] and items[1].word or ' (nothing)')
  end
  answers.taken = {}
  local function take(number, typed)
    vim.fn.setline(number, typed)
    vim.api.nvim_win_set_cursor(0, { number, #typed })
    took = nil
    vim.lsp.omnifunc(1, '')
    wait('what may stand behind ' .. typed, function()
      return took ~= nil
    end)
    table.insert(answers.taken, vim.trim(took))
  end
  take(cure + 1, '    dry at air-on 7.5')
  vim.fn.deletebufline('%', cure + 1)
  local from = goto_text('from 6 kg')
  local was = line(from)
  take(from, '  from 6 kg of "')
  take(from, '  from 6 kg of "Mill b')
  take(from, '  steep')
  vim.fn.setline(from, was)
  local use = goto_text('use "')
  was = line(use)
  take(use, 'use "lo')
  vim.fn.setline(use, was)
  vim.fn.mode, vim.fn.complete = mode, complete

  -- layout
  local steep = goto_text('soak 7 h in water')
  vim.fn.setline(steep, 'soak    7 h in   water at 13 °C')
  press('<F3>')
  wait('the layout', function()
    return line(steep) == '      soak 7 h in water at 13 °C'
  end)
  answers.laid_out = line(steep)

  -- rename, in this file and in the one that it uses
  goto_text('tray kiln')
  vim.fn.cursor(vim.fn.line('.'), vim.fn.col('.') + 2)
  vim.lsp.buf.rename('box kiln')
  wait('the other name', function()
    return vim.fn.search('\\V"box kiln"', 'nw') > 0
  end)
  answers.renamed = line(vim.fn.search('\\V"box kiln"', 'nw'))

  -- definition
  vim.cmd('silent write')
  goto_text('box kiln')
  vim.fn.cursor(vim.fn.line('.'), vim.fn.col('.') + 2)
  press('gd')
  wait('the definition', function()
    return vim.fn.expand('%:t') == 'loft.malt'
  end)
  answers.defined = vim.fn.expand('%:t') .. ': ' .. vim.api.nvim_get_current_line()
  vim.cmd('silent wall')

  -- the server dies, and is started anew; what it said is taken away
  vim.cmd('edit pale.malt')
  vim.lsp.codelens.refresh()
  wait('a lens again', function()
    return lenses() > 0
  end)
  local before = vim.lsp.get_active_clients()[1]
  vim.loop.kill(before.rpc.pid, 'sigkill')
  wait('a server anew', function()
    local now = vim.lsp.get_active_clients()[1]
    return now and now.id ~= before.id and vim.lsp.buf_is_attached(0, now.id)
  end)
  answers.stale = lenses()
  vim.fn.setline(goto_text('soak 7 h in water'), '      soak 7 h in watter at 13 °C')
  wait('findings of the one anew', faulty)

  -- it dies at once again: it is left at that until the buffer is read anew
  vim.cmd('silent write')
  vim.loop.kill(vim.lsp.get_active_clients()[1].rpc.pid, 'sigkill')
  wait('no server', function()
    return #vim.lsp.get_active_clients() == 0 and not faulty()
  end)
  vim.cmd('edit')
  wait('findings of the third', faulty)
  vim.fn.setline(goto_text('soak 7 h in watter'), '      soak 7 h in water at 13 °C')
  vim.cmd('silent write')
end

local ok, failed = xpcall(run, debug.traceback)
if not ok then
  answers.failed = failed
end
vim.fn.writefile({ vim.json.encode(answers) }, vim.env.MALTWRIGHT_ANSWERS)
vim.cmd('qall!')
