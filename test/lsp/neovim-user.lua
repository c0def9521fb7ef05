-- What a user does in Neovim: waits for the findings, hovers, takes a fix, saves. Prints what was seen as one line of JSON.
local PATIENCE = 20000 -- ms

local function wait_for(look)
  local seen
  vim.wait(PATIENCE, function()
    seen = look()
    return seen
  end, 50)
  return seen
end

local function go_to(words)
  vim.fn.cursor(1, 1)
  vim.fn.search('\\V' .. words, 'c')
end

local function findings()
  return vim.tbl_map(function(shown)
    return { rule = shown.user_data.lsp.code, source = shown.source, severity = shown.severity, line = shown.lnum + 1 }
  end, vim.diagnostic.get(0))
end

local function text_of_float()
  for _, window in ipairs(vim.api.nvim_list_wins()) do
    if vim.api.nvim_win_get_config(window).relative ~= '' then
      return table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false), '\n')
    end
  end
end

local function take_fix(title)
  local offered
  vim.ui.select = function(items, options, choose)
    offered = vim.tbl_map(options.format_item, items)
    for index, item in ipairs(items) do
      if vim.startswith(offered[index], title) then choose(item, index) end
    end
  end
  local before = vim.api.nvim_buf_get_changedtick(0)
  vim.lsp.buf.code_action()
  wait_for(function() return offered and vim.api.nvim_buf_get_changedtick(0) ~= before end)
  return offered
end

wait_for(function() return #vim.diagnostic.get(0) > 0 end)
local seen = { findings = findings() }

go_to('K2-MT-101:')
vim.lsp.buf.hover()
seen.hover = wait_for(text_of_float)
vim.cmd('normal! l') -- closes the hover

go_to('relative-humidity:')
seen.fixes = take_fix('Report dew point instead')
wait_for(function() return #vim.diagnostic.get(0) < #seen.findings end)
seen.findings_left = findings()
vim.cmd('write')

io.stdout:write(vim.fn.json_encode(seen) .. '\n')
vim.cmd('quitall!')
