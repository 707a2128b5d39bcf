# Completes the words of fairblade in bash: commands, options, the values that options take, names of files.
# Installed under share/bash-completion/completions; or: source fairblade.bash

# What may follow an option of the command, as words or as a kind of file; status 1 where the option takes no value.
_fairblade_value() {
  case $1:$2 in
    *:--approach) echo "full-section edges-only" ;;
    *:--thickness) echo "least-fill closest" ;;
    *:--max-thickness-at) echo "form closest" ;;
    offsets:--leading-edge-radius | offsets:--trailing-edge-thickness) echo "" ;;
    *:--leading-edge-radius | *:--trailing-edge-thickness) echo "form" ;;
    *:--leading-edge) echo "shape leave" ;;
    *:--spanwise) echo "fair straight as-measured" ;;
    *:--units) echo "mm cm in" ;;
    *:--stage) echo "bare glassed final" ;;
    *:-o | *:--output) echo "FOLDERS" ;;
    *:--measured-by) echo "half-breadths thickness gaps" ;;
    *:--paper) echo "A4 Letter both" ;;
    *:--svg | *:--write-job | worksheet:--csv) echo "FILES" ;;
    *:--stations | *:--span | *:--tip-chord | *:--job) echo "" ;;
    *:--tolerance | *:--at | *:--every | *:--gauge-spacing | *:--chord | *:--keep | *:--no-cut | *:--max-removal | *:--extend-*) echo "" ;;
    *) return 1 ;;
  esac
}

_fairblade_options() {
  local all="-h --help --version --json --quiet --strict"
  local target="--approach --thickness --max-thickness-at --leading-edge-radius --trailing-edge-thickness
    --extend-leading-edge --extend-trailing-edge --keep --leading-edge --no-cut --max-removal --spanwise"
  case $1 in
    plan) echo $all $target -o --output --at --every --gauge-spacing --write-job ;;
    check) echo $all ;;
    choices) echo $all $target ;;
    worksheet) echo ${all/--json/} -o --output --stations --span --chord --tip-chord --units --job --measured-by --paper --csv ;;
    recheck) echo $all -o --output --tolerance --stage ;;
    offsets) echo $all --chord --leading-edge-radius --trailing-edge-thickness --at --units --svg --csv ;;
  esac
}

# Names of files that begin like the word: of those kinds, and folders to go on in.
_fairblade_files() {
  local name kind
  compopt -o filenames 2>/dev/null
  while IFS= read -r name; do
    if [[ -d $name ]]; then
      COMPREPLY+=("$name")
      continue
    fi
    for kind in "${@:2}"; do
      [[ ${name,,} == *"$kind" ]] && COMPREPLY+=("$name") && break
    done
  done < <(compgen -f -- "$1")
}

_fairblade() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command=${COMP_WORDS[1]} values
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    COMPREPLY=($(compgen -W "plan check choices worksheet recheck offsets --help --version" -- "$word"))
    return
  fi
  # Bash makes a word of its own of the = in --option=value.
  if [[ $word == = ]]; then
    word=
  elif [[ $before == = ]]; then
    before=${COMP_WORDS[COMP_CWORD - 2]}
  fi
  if [[ $before == -* ]] && values=$(_fairblade_value "$command" "$before"); then
    case $values in
      FOLDERS) _fairblade_files "$word" ;;
      FILES) _fairblade_files "$word" "" ;;
      *) COMPREPLY=($(compgen -W "$values" -- "$word")) ;;
    esac
  elif [[ $word == -* ]]; then
    COMPREPLY=($(compgen -W "$(_fairblade_options "$command")" -- "$word"))
  elif [[ $command == offsets ]]; then
    COMPREPLY=()
  else
    _fairblade_files "$word" .json .jsonc .csv .tsv
  fi
}

complete -F _fairblade fairblade
